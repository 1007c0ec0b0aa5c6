import { describe, expect, it } from 'vitest';
import { codeFiles, readText, treeFiles } from './source-tree';
import { isOurText, reassurances, workplaceWords } from './word-rule';

/** They spell out what is banned. */
const THE_RULE_ITSELF = ['tests/architecture/word-rule.ts', 'tests/architecture/words.test.ts'];

describe('the rule against workplace words', () => {
  it.each([
    '// see #12 for the reason',
    '// fixes issue 7',
    '// as asked in pull request #3',
    '// the previous session left this',
    'A later session may finish it.',
    '// written by a sub-agent',
    '// another agent owns this file',
    '// ask the lead first',
    "const photos = '/work/shared/data';",
    "const scratch = '/tmp/arch/a.png';",
    '"resolved": "https://registry.npmjs.org/zod"',
    'This grew out of one podiatrist’s talk.',
    '// generated with Claude',
  ])('catches: %s', (planted) => {
    expect(workplaceWords('lib/card/planted.ts', planted)).toHaveLength(1);
  });

  it('catches them in file names', () => {
    expect(workplaceWords('docs/next-session.md', '')).toHaveLength(1);
    expect(workplaceWords('docs/helper-two.md', '')).toHaveLength(1);
  });

  it.each([
    "const ink = '#1b2a49';",
    "const dark = '#111';",
    '&#39;',
    'The session cookie ends after 30 minutes.',
    'navigator.userAgent and the user agent string',
    'join(tmpdir(), name)',
    "import { workers } from '../work/table';",
    'a lead of 3 mm, the leading edge, Sen (1968) 5.2',
    'const first = list[1]; // the 2nd place',
  ])('lets be: %s', (planted) => {
    expect(workplaceWords('lib/card/planted.ts', planted)).toEqual([]);
  });

  it('leaves the web its sessions', () => {
    expect(workplaceWords('lib/edges/session/read-session.ts', '// the last session of this person')).toEqual([]);
    expect(workplaceWords('lib/card/serial.ts', '// the last session of this person')).toHaveLength(1);
  });
});

describe('the rule against reassurance', () => {
  it.each([
    "const said = 'Everything looks normal.';",
    "const said = 'Your toe is fine';",
    'const said = `${name} is healing well.`;',
    "const said = 'All well, no problem.';",
    "const said = { sentence: 'Nothing to worry about.' };",
    "const said = 'There is no infection.';",
    "const said = 'A healthy toe.';",
  ])('catches: %s', (planted) => {
    expect(reassurances('lib/photo/planted.ts', planted).length).toBeGreaterThan(0);
  });

  it('catches text between tags', () => {
    expect(reassurances('app/page.tsx', 'export const Page = () => <p>All is well: it looks good.</p>;')).toHaveLength(1);
  });

  it.each([
    "const said = 'No region stood out from the reference skin. That does not show that there is none.';",
    'const normal = cross(across, down); // the normal of the plane',
    "import { refine } from './fine';",
    "const said = 'The line must be defined and refined.';",
  ])('lets be: %s', (planted) => {
    expect(reassurances('lib/photo/planted.ts', planted)).toEqual([]);
  });
});

describe('the tree', () => {
  it('speaks of the work and never of the workplace', () => {
    const files = treeFiles().filter((file) => isOurText(file) && !THE_RULE_ITSELF.includes(file));
    expect(files.flatMap((file) => workplaceWords(file, readText(file)))).toEqual([]);
  });

  it('reassures nobody', () => {
    const files = codeFiles().filter((file) => /^(lib|app)\//.test(file));
    expect(files.flatMap((file) => reassurances(file, readText(file)))).toEqual([]);
  });
});
