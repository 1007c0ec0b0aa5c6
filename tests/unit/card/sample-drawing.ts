import { ownCardDrawing } from '../../../lib/card/own-card-drawing';
import { cardCode, parseSerial, type Serial } from '../../../lib/card/serial';
import { qrModules } from '../../../lib/edges/paper/qr-modules';

function serialOf(text: string): Serial {
  const reading = parseSerial(text);
  if ('problem' in reading) throw new Error(reading.problem);
  return reading.serial;
}

/** A card with a fixed serial (an invented number with its check symbol). */
export const SAMPLE_SERIAL = serialOf('7K3QM2XPAVC');
export const sampleDrawing = () => ownCardDrawing(SAMPLE_SERIAL, qrModules(cardCode(SAMPLE_SERIAL)));
