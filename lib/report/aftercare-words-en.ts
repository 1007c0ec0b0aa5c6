import type { AftercareWords } from './aftercare-facts';

/**
 * The aftercare sheet in English.
 * @example AFTERCARE_EN.bleeding.heading // 'If it bleeds'
 */
export const AFTERCARE_EN: AftercareWords = {
  title: 'After your toenail operation',
  toe: { left: 'Left big toe', right: 'Right big toe', unknown: 'Big toe' },
  about: (toe, date, caseCode) => `${toe}, ${date}. Case ${caseCode}.`,
  page: {
    heading: 'Your own page',
    lines: [
      'Scan the square code with your phone. It opens your own page. You need no account and no password.',
      'The page shows what to do today. It asks for a photo of your toe, with the card around it, and a few short questions.',
      'Keep this sheet. Whoever has the code can open your page.',
    ],
    every: (hours) => (hours === 24 ? 'Do a check-in every day.' : `Do a check-in every ${hours} hours.`),
  },
  plan: {
    heading: 'Your plan',
    dressing: (hours, until) => `The first dressing stays on for ${hours} hours: until ${until}. Keep it dry.`,
    soaks: (perDay, minutes, days) =>
      `Then soak your toe in warm water ${perDay === 1 ? 'once a day' : `${perDay} times a day`}, ${minutes} minutes each time${days === null ? '.' : `, until day ${days}.`} Dry it well.`,
    noSoaks: 'No soaks. Keep the toe dry.',
    cover: 'Between soaks, cover the toe with a clean, dry dressing.',
    noCover: 'Between soaks, leave the toe open to the air at home.',
  },
  bleeding: {
    heading: 'If it bleeds',
    lines: ['Press on it with a clean cloth. Put your foot up, higher than your heart. Keep pressing for 20 minutes and do not look in between.', 'Is blood still coming after 20 minutes? Does it run or drip, or do you feel faint? Call at once.'],
  },
  call: {
    heading: 'Call at once if',
    signs: (feverC, numbHours) => [
      'a red line runs up your foot or leg',
      `you have a fever (${feverC} °C or more), you shiver, or you feel muddled`,
      'your toe turns black, grey or cold',
      'the pain gets much worse, or tablets do not help',
      `your toe is still numb ${numbHours} hours after the injection`,
      'you can see bone or a tendon',
      'thick yellow or green pus comes out',
      'the redness spreads',
      'anything worries you',
    ],
    why: 'Do not wait for your page or a photo. Call, whatever they say.',
  },
  who: { heading: 'Who to call', hours: (hours) => `Open: ${hours}`, emergency: (phone) => `In an emergency, or when nobody answers: ${phone}` },
  caution: [
    'Your page helps the clinic to measure your toe. It does not say what is wrong, and it is not a medical device.',
    'It cannot see heat, depth, pus under the skin, or bone. What your clinic tells you comes first.',
  ],
};
