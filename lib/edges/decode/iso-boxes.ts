import { MAX_FILE_PARTS } from '../../photo/constants';

/** Walks the boxes of an ISO base media file (ISO/IEC 14496-12): size, four letters, content. Nothing is decoded. */
export interface IsoBox {
  readonly type: string;
  readonly content: ByteCursor;
}

/** Reads big-endian numbers forward; running past the end throws RangeError, which the caller turns into a refusal. */
export class ByteCursor {
  private at = 0;
  private readonly view: DataView;

  constructor(readonly bytes: Uint8Array) {
    this.view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  }

  get left(): number {
    return this.bytes.length - this.at;
  }

  /** Whole number of 0, 1, 2, 4 or 8 bytes, as the item location box uses them. */
  number(byteCount: number): number {
    let value = 0;
    for (let i = 0; i < byteCount; i += 1) value = value * 256 + this.view.getUint8(this.at + i);
    this.at += byteCount;
    return value;
  }

  letters(): string {
    return String.fromCharCode(this.number(1), this.number(1), this.number(1), this.number(1));
  }

  take(byteCount: number): Uint8Array {
    if (byteCount < 0 || byteCount > this.left) throw new RangeError(`${byteCount} bytes wanted, ${this.left} left`);
    this.at += byteCount;
    return this.bytes.subarray(this.at - byteCount, this.at);
  }
}

const LARGE_SIZE_FOLLOWS = 1;
const TO_THE_END = 0;

/** The boxes that lie side by side from the cursor on. A box that reaches past its parent throws RangeError. */
export function* isoBoxes(parent: ByteCursor): Generator<IsoBox> {
  for (let part = 0; parent.left >= 8; part += 1) {
    if (part >= MAX_FILE_PARTS) throw new RangeError(`at most ${MAX_FILE_PARTS} boxes side by side are read`);
    const stated = parent.number(4);
    const type = parent.letters();
    let size = stated - 8;
    if (stated === LARGE_SIZE_FOLLOWS) size = parent.number(8) - 16;
    else if (stated === TO_THE_END) size = parent.left;
    yield { type, content: new ByteCursor(parent.take(size)) };
  }
}

/** The first box of that name, or undefined. */
export function findBox(parent: ByteCursor, type: string): IsoBox | undefined {
  for (const box of isoBoxes(parent)) if (box.type === type) return box;
  return undefined;
}
