import type { AnalysisPorts } from '../pipeline/ports';
import { decodePhoto } from './decode/decode-photo';
import { tissueModel } from './infer/tissue-model';
import { detectFiducials } from './vision/detect-fiducials';
import { openCv } from './vision/open-cv';
import { readCardQr } from './vision/read-card-qr';

/** The real decoder, detector, code reader and tissue model, loaded and ready. */
export async function analysisPorts(): Promise<AnalysisPorts> {
  const [{ cv }, model] = await Promise.all([openCv(), tissueModel()]);
  return {
    decodePhoto,
    detectFiducials: (image, dictionary, effort) => detectFiducials(cv, image, dictionary, effort),
    readQr: readCardQr,
    inferTissue: (map) => model.infer(map),
  };
}
