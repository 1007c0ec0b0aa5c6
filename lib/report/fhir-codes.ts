/**
 * Codes of the FHIR export. Terminology: LOINC (wound area 89260-4, seen in a published FHIR profile; pain 72514-3 and body
 * temperature 8310-5), SNOMED CT (great toe 78883009), UCUM. Where no code is known, our own code and words stand alone.
 */
export type FhirJson = Readonly<Record<string, unknown>>;

export const OWN = 'urn:foldwatch';
const LOINC = 'http://loinc.org';
const UCUM = 'http://unitsofmeasure.org';

interface Code {
  readonly words: string;
  readonly coding?: { readonly system: string; readonly code: string; readonly display: string };
}

/** What is measured on a photo. */
export const MEASURED_CODES = {
  reach: { words: 'Reach of redness from the nail-fold margin, projected onto the plane of the card' },
  unrolledReach: { words: 'Reach of redness from the nail-fold margin, around the toe' },
  erythemaArea: { words: 'Area of redness, projected onto the plane of the card' },
  rawArea: { words: 'Raw area, projected onto the plane of the card', coding: { system: LOINC, code: '89260-4', display: 'Area of wound' } },
  grooveWidth: { words: 'Width of the groove beside the nail, projected onto the plane of the card' },
} as const satisfies Readonly<Record<string, Code>>;

const CODES = {
  ...MEASURED_CODES,
  standardUncertainty: { words: 'Standard uncertainty (JCGM 100)' },
  expandedUncertainty: { words: 'Expanded uncertainty, k = 2 (JCGM 100)' },
  pain: { words: 'Pain as said, 0 to 10', coding: { system: LOINC, code: '72514-3', display: 'Pain severity - 0-10 verbal numeric rating [Score] - Reported' } },
  temperature: { words: 'Temperature as said', coding: { system: LOINC, code: '8310-5', display: 'Body temperature' } },
  greatToe: { words: 'Great toe', coding: { system: 'http://snomed.info/sct', code: '78883009', display: 'Great toe structure' } },
} as const satisfies Readonly<Record<string, Code>>;

/** HL7 terminology, data-absent-reason: the reason itself stands in the text. */
export const ABSENT = { system: 'http://terminology.hl7.org/CodeSystem/data-absent-reason', code: 'not-performed', display: 'Not Performed' } as const;

const UNIT_WORDS: Readonly<Record<string, string>> = { mm2: 'mm²', Cel: '°C', '{score}': 'of 10' };

/**
 * A CodeableConcept: our own code first, and a common one where there is one.
 *
 * @param name of the code
 * @param words instead of its own
 * @example fhirCode('reach').text // 'Reach of redness from the nail-fold margin, projected onto the plane of the card'
 */
export function fhirCode(name: keyof typeof CODES, words?: string): { readonly coding: readonly FhirJson[]; readonly text: string } {
  const code: Code = CODES[name];
  return { coding: [{ system: `${OWN}:code`, code: name, display: code.words }, ...(code.coding ? [code.coding] : [])], text: words ?? code.words };
}

/**
 * A Quantity in UCUM.
 *
 * @param value as measured
 * @param unit UCUM code
 * @returns the value with six significant figures: more say nothing
 * @example quantityOf(1.23456789, 'mm').value // 1.23457
 */
export const quantityOf = (value: number, unit: string): FhirJson => ({ value: Number(value.toPrecision(6)), unit: UNIT_WORDS[unit] ?? unit, system: UCUM, code: unit });
