import type { GreyImage } from '../../rectify/grey-image';
import type { SearchEffort } from '../../rectify/find-card';
import type { FoundFiducial } from '../../rectify/found-fiducial';
import { type OpenCv, withOpenCv } from './open-cv';

/** `quick`, `thorough`: wary, for our own card. `any`: OpenCV's classic settings with sub-pixel corners, for any marker. */
export type FiducialSearch = SearchEffort | 'any';

/** With a small dictionary a wrong id is worse than a missed one; corners are refined later, at the photo's full resolution. */
const WARY = { errorCorrectionRate: 0.3, cornerRefinementMethod: 0 } as const;

/** Settings of OpenCV's detector that differ between the searches; names as OpenCV spells them. */
const SETTINGS: Readonly<Record<FiducialSearch, Readonly<Record<string, number>>>> = {
  quick: { ...WARY, adaptiveThreshWinSizeMin: 11, adaptiveThreshWinSizeMax: 11 },
  thorough: { ...WARY, adaptiveThreshWinSizeMin: 5, adaptiveThreshWinSizeMax: 29, adaptiveThreshWinSizeStep: 12 },
  any: {
    cornerRefinementMethod: 1,
    // Windows of a fixed 5 pixels, as in every release before relative windows came; markers here are not tiny.
    relativeCornerRefinmentWinSize: 10,
  },
};

/** Four sides of 10 pixels: under that the 6 × 6 cells of a 4 × 4 marker cannot be read. */
const MIN_PERIMETER_PX = 40;

/**
 * Square fiducials of one predefined dictionary in a grey picture, corners clockwise from the marker's own top left,
 * in pixels of that picture. In a search for the card they are coarse: `rectify/refine-corners` makes them precise at
 * the photo's full resolution, in linear light.
 */
export function detectFiducials(cv: OpenCv, image: GreyImage, dictionaryName: string, search: FiducialSearch = 'thorough'): FoundFiducial[] {
  const dictionaryId: unknown = cv[dictionaryName];
  if (typeof dictionaryId !== 'number') throw new RangeError(`detectFiducials: unknown dictionary ${dictionaryName}`);
  return withOpenCv(cv, 'detectFiducials', (own) => {
    const picture = own(new cv.Mat(image.heightPx, image.widthPx, cv.CV_8UC1));
    picture.data.set(image.grey);
    const settings = own(new cv.aruco_DetectorParameters());
    if (search !== 'any') settings.minMarkerPerimeterRate = MIN_PERIMETER_PX / Math.max(image.widthPx, image.heightPx);
    Object.assign(settings, SETTINGS[search]);
    const dictionary = own(cv.getPredefinedDictionary(dictionaryId));
    const detector = own(new cv.aruco_ArucoDetector(dictionary, settings, own(new cv.aruco_RefineParameters(10, 3, true))));
    const corners = own(new cv.MatVector());
    const ids = own(new cv.Mat());
    const rejected = own(new cv.MatVector());
    detector.detectMarkers(picture, corners, ids, rejected);
    return Array.from({ length: corners.size() }, (_, i) => readMarker(own(corners.get(i)), ids.data32S[i]));
  });
}

function readMarker(four: { readonly data32F: Float32Array }, id: number): FoundFiducial {
  const at = four.data32F;
  return { id, cornersPx: [0, 1, 2, 3].map((k) => ({ column: at[2 * k], row: at[2 * k + 1] })) };
}
