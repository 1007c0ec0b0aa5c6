import type { GreyImage } from '../../rectify/grey-image';
import type { FoundFiducial } from '../../rectify/found-fiducial';
import { type OpenCv, withOpenCv } from './open-cv';

/**
 * Square fiducials of one predefined dictionary in a grey picture, corners clockwise from the marker's own top left,
 * in pixels of that picture (coarse: whole-pixel contours; `rectify/refine-corners` makes them precise).
 *
 * Error correction is low on purpose: with a small dictionary a wrong id is worse than a missed one.
 */
export function detectFiducials(cv: OpenCv, image: GreyImage, dictionaryName: string): FoundFiducial[] {
  const dictionaryId: unknown = cv[dictionaryName];
  if (typeof dictionaryId !== 'number') throw new RangeError(`detectFiducials: unknown dictionary ${dictionaryName}`);
  return withOpenCv(cv, 'detectFiducials', (own) => {
    const picture = own(new cv.Mat(image.heightPx, image.widthPx, cv.CV_8UC1));
    picture.data.set(image.grey);
    const dictionary = own(cv.getPredefinedDictionary(dictionaryId));
    const settings = own(new cv.aruco_DetectorParameters());
    settings.minMarkerPerimeterRate = MIN_PERIMETER_PX / Math.max(image.widthPx, image.heightPx);
    settings.adaptiveThreshWinSizeMin = 5;
    settings.adaptiveThreshWinSizeMax = 29;
    settings.adaptiveThreshWinSizeStep = 12;
    settings.errorCorrectionRate = 0.3;
    settings.cornerRefinementMethod = 0;
    const detector = own(new cv.aruco_ArucoDetector(dictionary, settings, own(new cv.aruco_RefineParameters(10, 3, true))));
    const corners = own(new cv.MatVector());
    const ids = own(new cv.Mat());
    const rejected = own(new cv.MatVector());
    detector.detectMarkers(picture, corners, ids, rejected);
    return Array.from({ length: corners.size() }, (_, i) => {
      const four = own(corners.get(i));
      const at: Float32Array = four.data32F;
      return {
        id: ids.data32S[i] as number,
        cornersPx: [0, 1, 2, 3].map((k) => ({ column: at[2 * k], row: at[2 * k + 1] })),
      } satisfies FoundFiducial;
    });
  });
}

/** Four sides of 10 pixels: under that the 6 × 6 cells of a 4 × 4 marker cannot be read. */
const MIN_PERIMETER_PX = 40;
