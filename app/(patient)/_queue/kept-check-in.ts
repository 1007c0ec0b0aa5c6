import type { Answers } from '../../../lib/care/answers';
import type { CheckInBody, CheckInReceipt, PhotoKind } from '../../../lib/care/patient-contract';

/** A photo on this phone: its bytes lie beside it in pieces, as plain buffers. */
export interface KeptPhoto {
  readonly sha256: string;
  readonly lengthBytes: number;
  readonly mediaType: string;
  readonly kind: PhotoKind;
  /** The server has all of it, and has said so. */
  readonly complete: boolean;
}

/** A check-in from its first touch to the clinic's receipt. It is written down at every change. */
export interface KeptCheckIn {
  readonly clientId: string;
  /** Whose it is: it is sent under no other link that may be opened on the same phone. */
  readonly owner: string;
  readonly kind: CheckInBody['kind'];
  readonly step: number;
  readonly answers: Answers;
  readonly worry: string;
  readonly photo: KeptPhoto | null;
  /** When the twenty minutes of pressure began, milliseconds by this phone's clock. */
  readonly timerStartedAtMs: number | null;
  /** When send was pressed; null while it is being filled in. */
  readonly at: string | null;
  readonly receipt: CheckInReceipt | null;
  /** The answer of a server that did not take it; it stays here all the same. */
  readonly refusedStatus: number | null;
}

/** An empty one: `newCheckIn(crypto.randomUUID(), owner, 'daily')`. */
export const newCheckIn = (clientId: string, owner: string, kind: KeptCheckIn['kind']): KeptCheckIn => ({
  clientId,
  owner,
  kind,
  step: 0,
  answers: {},
  worry: '',
  photo: null,
  timerStartedAtMs: null,
  at: null,
  receipt: null,
  refusedStatus: null,
});

/** Send was pressed and no receipt came back: what the person is told is "not sent yet". */
export const isUnsent = ({ at, receipt }: KeptCheckIn): boolean => at !== null && receipt === null;

/** Is there anything about it that the server should get now? The photo of a draft goes ahead of its answers. */
export const hasSomethingToSend = (kept: KeptCheckIn): boolean => isUnsent(kept) || (kept.photo !== null && !kept.photo.complete);

/** What the server gets once the photo is there. Pressing send again changes neither the time nor the id. */
export function bodyOf({ kind, at, answers, worry, photo }: KeptCheckIn): CheckInBody {
  if (at === null) throw new RangeError('bodyOf: a check-in is sent after send was pressed, received at: null');
  const words = worry.trim();
  return { kind, at, answers, hasPhoto: photo !== null, ...(words === '' ? {} : { worry: words }) };
}
