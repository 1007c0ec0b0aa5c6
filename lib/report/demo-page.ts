export interface DemoPicture {
  readonly name: string;
  /** File name of the overlay beside the page; null where nothing could be drawn. */
  readonly picture: string | null;
  /** Why it was not measured, as told to the person who took it. */
  readonly reasons: readonly string[];
}

/**
 * A page of overlays for looking at.
 *
 * @param sections titles with their pictures
 * @param caution one sentence that stands on top
 * @example demoPage([], 'A measurement aid.').startsWith('<!doctype html>') // true
 */
export function demoPage(sections: readonly { readonly title: string; readonly pictures: readonly DemoPicture[] }[], caution: string): string {
  const figure = ({ name, picture, reasons }: DemoPicture) =>
    `<figure>${picture ? `<img src="${escape(picture)}" alt="Outlines on ${escape(name)}" loading="lazy">` : '<p class="none">no card, no millimetres</p>'}<figcaption>${escape(name)}${reasons.map((reason) => `<br><em>${escape(reason)}</em>`).join('')}</figcaption></figure>`;
  return `<!doctype html>
<html lang="en"><head><meta charset="utf-8"><meta name="viewport" content="width=device-width, initial-scale=1"><title>Foldwatch: sample photos</title>
<style>${STYLE}</style></head><body><h1>Foldwatch: sample photos</h1><p>${escape(caution)} All photos are rendered; no person is shown.</p>
${sections.map(({ title, pictures }) => `<h2>${escape(title)}</h2><div>${pictures.map(figure).join('')}</div>`).join('\n')}
</body></html>
`;
}

const STYLE = `:root{color-scheme:light dark}body{margin:2rem auto;max-width:80rem;padding:0 1rem;font:16px/1.5 Georgia,serif;color:light-dark(#142048,#dfe3ee);
background:light-dark(#fcfbf7,#12151f) repeating-linear-gradient(0deg,#0000 0 4px,#b02a6008 4px 5px),repeating-linear-gradient(90deg,#0000 0 4px,#b02a6008 4px 5px)}
h1,h2{font-weight:400;border-bottom:1px solid}div{display:flex;flex-wrap:wrap;gap:1rem}figure{margin:0;width:18rem}img{width:100%}.none{border:1px dashed;padding:4rem 1rem;text-align:center;margin:0}figcaption{font-size:.85rem}`;

function escape(text: string): string {
  return text.replace(/[&<>"]/g, (one) => `&#${one.charCodeAt(0)};`);
}
