/**
 * What is checked against something that nobody of this project made: one line for each published table, standard,
 * reference library or picture. `says` stands in the file itself, so that the source is found beside the check. The list
 * in DEVELOPERS.md is this one; a test holds the two together.
 */
export interface OutsideCheck {
  readonly stage: string;
  readonly what: string;
  readonly source: string;
  readonly file: string;
  /** Words of the source in that file. */
  readonly says: string;
  /** How near it has to come, and why no nearer. */
  readonly tolerance: string;
}

export const OUTSIDE_CHECKS: readonly OutsideCheck[] = [
  { stage: 'colour', what: 'CIEDE2000, 34 pairs, both orders', source: 'Sharma, Wu and Dalal 2005', file: 'colour/ciede2000-sharma-2005.ts', says: 'Sharma', tolerance: '4 decimals, as printed' },
  { stage: 'colour', what: 'curve, matrices and primaries of sRGB; D65 against D50', source: 'IEC 61966-2-1; CIE 15; a public library’s test file', file: 'colour/srgb-and-lab.test.ts', says: 'IEC 61966-2-1', tolerance: '4 decimals of the standard; 0.01 of L*a*b*, two decimals published' },
  { stage: 'colour', what: '24-patch chart, sRGB and D50 columns', source: 'published chart tables', file: 'colour/chart-24.ts', says: 'D50', tolerance: '0.015, two decimals published' },
  { stage: 'colour', what: 'chart photos: fitted on half of the patches, judged on the others', source: 'real photos, shared data', file: 'colour/real-charts.test.ts', says: "hasSharedData('colour')", tolerance: 'nearer than before the fit; figures printed: the charts’ own values are nominal' },
  { stage: 'colour', what: '500 random colours both ways', source: 'culori', file: 'colour/culori.test.ts', says: 'culori', tolerance: '1e-9, rounding of its matrices' },
  { stage: 'colour', what: 'ITA bounds and oracles; erythema index of log10 2', source: 'Chardon 1991; Del Bino and Bernerd 2013; Diffey 1984', file: 'colour/skin-indices.test.ts', says: 'Chardon 1991', tolerance: 'exact to the digits given' },
  { stage: 'phantom', what: 'melanin and haemoglobin absorption', source: 'Jacques 1998; Prahl’s compilation', file: 'phantom/skin-absorption.test.ts', says: 'Jacques', tolerance: 'digits as listed' },
  { stage: 'card', what: 'ID-1, A4, Letter; marker bits; check symbols', source: 'ISO/IEC 7810; ISO 216; OpenCV; base32-crockford', file: 'card/standards.test.ts', says: 'ISO/IEC 7810', tolerance: 'exact' },
  { stage: 'card', what: 'page boxes and distances in the PDF, read from its operators', source: 'ISO 216; ISO/IEC 7810; ISO 32000-1', file: 'card/printed-sheet.test.ts', says: 'ISO 32000-1', tolerance: '0.05 mm, the bar of the checks' },
  { stage: 'card', what: 'QR code read by another library than the one that made it', source: 'ISO/IEC 18004; jsQR', file: 'card/code-on-card.test.ts', says: 'ISO/IEC 18004', tolerance: 'exact' },
  { stage: 'rectify', what: 'real photos of printed boards: markers, pitch, sides; corners of native OpenCV', source: 'photos by others, shared data; python3-opencv', file: 'rectify/printed-boards.test.ts', says: 'native OpenCV', tolerance: '0.27 mm, as their author states; 0.5 px for 95 % of markers' },
  { stage: 'rectify', what: 'tilt cos θ, height D/(D−Δz), chord of a cylinder', source: 'exact geometry', file: 'rectify/geometry-of-bias.test.ts', says: 'a plane raised above the card', tolerance: 'half a unit of the last digit' },
  { stage: 'measure', what: 'the same geometry as terms of the budget', source: 'exact geometry', file: 'measure/geometry-of-bias.test.ts', says: 'Exact geometry', tolerance: 'half a unit of the last digit' },
  { stage: 'measure', what: 'area, perimeter, centroid: closed formulas and 40 irregular rings', source: 'shoelace, Ramanujan 1914; d3-polygon', file: 'measure/ring-geometry.test.ts', says: 'd3-polygon', tolerance: '1e-9; 0.002 % for 720 chords' },
  { stage: 'measure', what: 'end gauge H.1: 31.7 nm, ν 16, U99 93 nm', source: 'JCGM 100:2008', file: 'measure/gum-end-gauge.test.ts', says: 'JCGM 100:2008', tolerance: 'as printed; ν ± 0.5 for its rounded inputs' },
  { stage: 'measure', what: 'limits of agreement; smallest detectable change', source: 'Bland and Altman 1986 (from memory); Landa et al. 2014', file: 'measure/agreement.test.ts', says: 'From memory', tolerance: '0.1–0.2, rounding of the paper' },
  { stage: 'measure', what: 'true outlines of phantoms that others rendered give their true numbers', source: 'other code, shared data', file: 'measure/phantom-truth.test.ts', says: "hasSharedData('toe-phantoms')", tolerance: '0.02–0.05 mm, 0.1 % of an area' },
  { stage: 'report', what: 'calendar file: lines, names, floating times, escapes', source: 'RFC 5545', file: 'report/plan-calendar.test.ts', says: 'RFC 5545', tolerance: 'exact' },
  { stage: 'trend', what: 'Theil–Sen with interval; cloud seeding', source: 'Sen 1968; Hollander and Wolfe (from memory)', file: 'trend/published-tables.test.ts', says: 'Sen 1968', tolerance: '1e-12' },
  { stage: 'trend', what: 'Mann–Kendall, with ties and exact tails', source: 'US EPA QA/G-9S; Wisconsin Administrative Code; Kendall’s table', file: 'trend/published-tables.test.ts', says: 'US EPA QA/G-9S', tolerance: 'digits as printed; 0.001 where the table has the normal approximation' },
  { stage: 'trend', what: 'EWMA and CUSUM examples', source: 'NIST/SEMATECH e-Handbook', file: 'trend/published-tables.test.ts', says: 'NIST/SEMATECH', tolerance: '1e-4, half a unit of the second decimal' },
  { stage: 'trend', what: 'linear advance of a circle', source: 'Gilman 1990', file: 'trend/published-tables.test.ts', says: 'Gilman 1990', tolerance: '1e-12' },
  { stage: 'decide', what: '4.9, 5.0, 5.1, 19.9, 20.0 mm', source: 'IWGDF/IDSA 2023', file: 'decide/published-limits.test.ts', says: 'IWGDF/IDSA 2023', tolerance: 'exact' },
  { stage: 'decide', what: 'purulence truth table; 30 days with day 1 the procedure’s', source: 'CDC/NHSN', file: 'decide/published-limits.test.ts', says: 'CDC/NHSN', tolerance: 'exact' },
  { stage: 'report', what: 'FHIR R4 export against the published schema', source: 'HL7’s JSON schema of R4', file: 'report/fhir-schema.test.ts', says: 'JSON schema of R4', tolerance: 'exact' },
  { stage: 'report', what: 'check digits of LOINC and SNOMED CT; units', source: 'Luhn; Verhoeff 1969; UCUM 2.2', file: 'report/fhir-schema.test.ts', says: 'Verhoeff 1969', tolerance: 'exact' },
  { stage: 'photo', what: '38 files: orientation 1–8, HEIC, Display P3, CMYK, truncated, bombs', source: 'files by others with exiftool’s readings, shared data', file: 'photo/decode-files.test.ts', says: 'exiftool', tolerance: 'exact' },
  { stage: 'photo', what: 'Display P3 as sRGB', source: 'W3C Web Platform Tests; culori', file: 'photo/display-p3.test.ts', says: 'W3C', tolerance: 'digits as published' },
  { stage: 'segment', what: 'skin, wound and nail photos with masks, by tone', source: 'FUSeg; nails_segmentation, shared data', file: 'segment/real-skin.test.ts', says: 'FUSeg', tolerance: 'nail plate Dice ≥ 0.80 where the photo resolves what the gate asks; the rest reported by `npm run bench -- outside`' },
  { stage: 'care', what: '2–3 mm of plate, 24 h, two weeks of soaks', source: 'common practice', file: 'care/trade-facts.test.ts', says: 'Common practice', tolerance: 'exact; 0.1 mm of blade' },
];
