/**
 * An episode as HL7 FHIR R4 (4.0.1), for other programs: resources and their fields as in hl7.org/fhir/R4, units by UCUM.
 * No name and no date of birth go out; the case code alone says who it is.
 */
import type { UnitCode } from '../result';
import { ABSENT, fhirCode, type FhirJson, type MEASURED_CODES, OWN, quantityOf } from './fhir-codes';

/** One number of one photo, or why there is none. */
export interface FhirMeasured {
  readonly photoId: string;
  readonly at: string;
  readonly measurand: keyof typeof MEASURED_CODES;
  readonly found: { readonly value: number; readonly u: number; readonly unit: UnitCode } | { readonly notMeasured: string };
  /** By what method, and whose outlines. */
  readonly method: string;
  /** A person has drawn its outlines anew. */
  readonly amended: boolean;
}

/** A number that the patient said. */
export interface FhirSaid {
  readonly key: string;
  readonly at: string;
  readonly what: 'pain' | 'temperature';
  readonly value: number;
}

export interface FhirFinding {
  readonly key: string;
  readonly at: string;
  readonly name: string;
  readonly detail: string;
  /** What a person decided about it; null while it is open. */
  readonly closed: { readonly at: string; readonly words: string } | null;
}

export interface FhirFacts {
  readonly caseCode: string;
  readonly writtenAt: string;
  readonly softwareVersion: string;
  readonly procedure: { readonly at: string; readonly words: string; readonly site: string };
  readonly photos: readonly { readonly id: string; readonly at: string; readonly sha256: string; readonly state: string }[];
  readonly measured: readonly FhirMeasured[];
  readonly said: readonly FhirSaid[];
  readonly findings: readonly FhirFinding[];
}

/**
 * The whole follow-up as a Bundle of the type "collection".
 *
 * @param facts of the episode, times in ISO 8601
 * @param uuidOf a UUID for a name, always the same for the same name
 * @returns plain JSON; each entry has a `urn:uuid:` of its own, by which the others refer to it
 * @example fhirBundle({ caseCode: 'HL-1', writtenAt: '2026-03-02T09:00:00Z', softwareVersion: '1', procedure: { at: '2026-03-01T09:00:00Z', words: 'done', site: 'left' }, photos: [], measured: [], said: [], findings: [] }, String).type // 'collection'
 */
export function fhirBundle(facts: FhirFacts, uuidOf: (name: string) => string): FhirJson {
  const urn = (name: string) => `urn:uuid:${uuidOf(name)}`;
  const refer = (name: string) => ({ reference: urn(name) });
  const entry = (name: string, resource: FhirJson): FhirJson => ({ fullUrl: urn(name), resource: { ...resource, id: uuidOf(name) } });
  const place: Place = { subject: refer('patient'), device: refer('device'), refer };
  return {
    resourceType: 'Bundle',
    type: 'collection',
    timestamp: facts.writtenAt,
    identifier: { system: `${OWN}:case`, value: facts.caseCode },
    entry: [
      entry('patient', { resourceType: 'Patient', identifier: [{ system: `${OWN}:case`, value: facts.caseCode }] }),
      entry('device', { resourceType: 'Device', deviceName: [{ name: 'Foldwatch', type: 'user-friendly-name' }], version: [{ value: facts.softwareVersion }] }),
      entry('procedure', procedureOf(facts, place)),
      ...facts.photos.map((photo) => entry(`photo ${photo.id}`, documentOf(photo, place))),
      ...facts.measured.map((one) => entry(`${one.photoId} ${one.measurand}`, measuredOf(one, place))),
      ...facts.said.map((one) => entry(`said ${one.key} ${one.what}`, saidOf(one, place))),
      ...facts.findings.map((one) => entry(`finding ${one.key}`, findingOf(one, place))),
    ],
  };
}

interface Place {
  readonly subject: FhirJson;
  readonly device: FhirJson;
  readonly refer: (name: string) => FhirJson;
}

const procedureOf = ({ procedure: { at, words, site } }: FhirFacts, { subject }: Place): FhirJson => ({
  resourceType: 'Procedure',
  status: 'completed',
  code: { text: 'Partial removal of an ingrown toenail' },
  subject,
  performedDateTime: at,
  bodySite: [fhirCode('greatToe', site)],
  note: [{ text: words }],
});

/** The photo itself stays where it is: its hash says which one it was. */
const documentOf = ({ at, sha256, state }: FhirFacts['photos'][number], { subject }: Place): FhirJson => ({
  resourceType: 'DocumentReference',
  status: 'current',
  type: { text: 'Photo of the toe with a calibration card' },
  subject,
  date: at,
  description: state,
  identifier: [{ system: `${OWN}:sha256`, value: sha256 }],
  content: [{ attachment: { contentType: 'image/jpeg', creation: at } }],
});

function measuredOf({ photoId, at, measurand, found, method, amended }: FhirMeasured, { subject, device, refer }: Place): FhirJson {
  const known = {
    resourceType: 'Observation',
    status: amended ? 'amended' : 'final',
    code: fhirCode(measurand),
    subject,
    device,
    effectiveDateTime: at,
    derivedFrom: [refer(`photo ${photoId}`)],
    method: { text: method },
  };
  if ('notMeasured' in found) return { ...known, dataAbsentReason: { coding: [ABSENT], text: found.notMeasured } };
  const { value, u, unit } = found;
  return {
    ...known,
    valueQuantity: quantityOf(value, unit),
    component: [
      { code: fhirCode('standardUncertainty'), valueQuantity: quantityOf(u, unit) },
      { code: fhirCode('expandedUncertainty'), valueQuantity: quantityOf(2 * u, unit) },
    ],
  };
}

const saidOf = ({ at, what, value }: FhirSaid, { subject }: Place): FhirJson => ({
  resourceType: 'Observation',
  status: 'final',
  code: fhirCode(what),
  subject,
  performer: [subject],
  effectiveDateTime: at,
  valueQuantity: quantityOf(value, what === 'pain' ? '{score}' : 'Cel'),
});

const findingOf = ({ at, name, detail, closed }: FhirFinding, { subject, device }: Place): FhirJson => ({
  resourceType: 'DetectedIssue',
  status: 'final',
  code: { text: name },
  patient: subject,
  author: device,
  identifiedDateTime: at,
  detail,
  ...(closed === null ? {} : { mitigation: [{ action: { text: closed.words }, date: closed.at }] }),
});
