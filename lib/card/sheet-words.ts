export interface Paragraph {
  readonly heading: string;
  readonly lines: readonly string[];
}

/** Whose card it is. */
export interface ClinicOnSheet {
  readonly name: string;
  readonly phone: string;
}

/** What the printed sheet says in one language, in lines that fit their column (a test measures them). */
export interface SheetWords {
  readonly language: string;
  readonly title: string;
  readonly subtitle: string;
  readonly printAndCut: readonly Paragraph[];
  readonly check: readonly Paragraph[];
  readonly lay: readonly Paragraph[];
  readonly figure: { readonly above: string; readonly side: string; readonly distance: string };
  readonly caution: Paragraph;
  /** Whom to call; lines to write on where the sheet is nobody's yet. */
  readonly clinicLine: (clinic: ClinicOnSheet | null) => string;
}

const PRINT_AND_CUT: readonly Paragraph[] = [
  {
    heading: '1  Print',
    lines: [
      'At 100 % or “actual size”, never “fit to page”.',
      'White, matt, stiff paper. Do not laminate it,',
      'do not photocopy it: print this file again.',
    ],
  },
  {
    heading: '2  Check the size (below), then cut',
    lines: [
      'Cut along the outer dashed line. Then cut the',
      'gap for the toe along one line: S, M or L. Take',
      'the narrowest that lies around the toe without',
      'touching the sore side.',
    ],
  },
];

const CHECK: readonly Paragraph[] = [
  {
    heading: 'Is the size right?',
    lines: [
      'Lay any bank card on this outline. A thin line',
      'shows evenly all round: the size is right.',
      '',
      'Or lay a ruler on the bar at the top of the',
      'card. It should read 50 mm.',
      '',
      'It reads  __________ mm',
      '',
      'Send what you found with the first photo.',
      'Until then measurements count as less',
      'certain.',
    ],
  },
];

const LAY: readonly Paragraph[] = [
  {
    heading: '3  Lay it around the toe',
    lines: [
      'The card rests level with the nail, flat, printed',
      'side up; a folded cloth under it helps. Nothing',
      'covers the black squares. It does not touch',
      'the wound. Dirty or bent: print a new one.',
    ],
  },
  {
    heading: '4  Take the photo',
    lines: ['Straight from above, about 25 cm away, in', 'even daylight or lamplight, without flash.'],
  },
];

const FIGURE_WORDS = { above: 'from above', side: 'from the side', distance: '25 cm' } as const;

const CAUTION: Paragraph = {
  heading: 'This card helps to measure. It does not tell what is wrong, and no result replaces a person who looks.',
  lines: [
    'More pain, spreading redness, pus, bleeding that does not stop, fever, or anything that worries you: call your clinic at once,',
    'whatever a measurement says. In an emergency call your local emergency number (112 or 911).',
  ],
};

const CLINIC_LINE: SheetWords['clinicLine'] = (clinic) => `My clinic: ${clinic?.name ?? '_'.repeat(38)}     Telephone: ${clinic?.phone ?? '_'.repeat(30)}`;

/** Plain words; a measuring aid and nothing more. */
export const SHEET_WORDS_EN: SheetWords = {
  language: 'en',
  title: 'Calibration card',
  subtitle: 'It lies around the big toe in every photo, so that the photo can be measured in millimetres.',
  printAndCut: PRINT_AND_CUT,
  check: CHECK,
  lay: LAY,
  figure: FIGURE_WORDS,
  caution: CAUTION,
  clinicLine: CLINIC_LINE,
};
