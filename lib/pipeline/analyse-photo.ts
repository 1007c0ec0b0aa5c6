/**
 * The journey of one photo on one screen: file → upright photo → card → millimetre map → colours → tissues →
 * measurements. Every step may end the journey with reasons; nothing that was found before is lost.
 */
import type { CardGeometry } from '../card/card-geometry';
import type { PrintScale } from '../card/print-check';
import { scaleGeometry } from '../card/scale-geometry';
import type { CardBaseline } from '../colour/card-baseline';
import { type CardKnowledge, HOME_CARD } from '../colour/card-knowledge';
import { a65Map } from '../colour/a65-map';
import { correctMap } from '../colour/correct-map';
import { erythemaIndexMap } from '../colour/erythema-index-map';
import { knowledgeFromBaseline } from '../colour/knowledge-from-baseline';
import { lightGates } from '../colour/light-gates';
import { matchMap } from '../colour/match-map';
import { matchToBaseline } from '../colour/match-to-baseline';
import { type CardColour, readCardColour } from '../colour/read-card-colour';
import { readPaper } from '../colour/read-paper';
import type { ReflectanceMap } from '../colour/reflectance-map';
import { readPatches } from '../colour/read-patches';
import { type BeforeCardContext, gatesBeforeCard } from '../photo/gates-before-card';
import { NotDecoded } from '../photo/not-decoded';
import { type GateReason, gateReason } from '../photo/reasons';
import type { UprightPhoto } from '../photo/upright-photo';
import { type CardLook, findCard, quickLook } from '../rectify/find-card';
import type { CardFit } from '../rectify/fit-card';
import { neededPart } from '../rectify/needed-part';
import { poseGates } from '../rectify/pose-gates';
import { resampleMap } from '../rectify/resample-map';
import { toeGrid } from '../rectify/toe-grid';
import type { ToldSide } from '../segment/segmentation';
import { segmentToe } from '../segment/segment-toe';
import { cropToToe } from '../segment/crop-to-toe';
import { toeGates } from '../segment/toe-gates';
import type { Analysis, AnalysisResult } from './analysis';
import { carryOver } from './carry-over';
import type { EarlierVisit } from './earlier-visit';
import { measureSegmentation } from './measure-segmentation';
import { METHOD_VERSION } from './method-version';
import type { AnalysisPorts, Decoded } from './ports';
import { seeCard } from './see-card';
import { sideOfVisits } from './side-of-visits';

export interface AnalysisRequest {
  readonly geometry: CardGeometry;
  readonly print: PrintScale;
  readonly context: BeforeCardContext;
  /** A clinic's measured card; a home card otherwise. */
  readonly knowledge?: CardKnowledge;
  /** The card as read from the baseline photo: later photos are brought to its colours. */
  readonly baseline?: CardBaseline | null;
  /** The same for several cards, by serial: the one whose serial this photo shows counts. */
  readonly baselines?: ReadonlyMap<string, CardBaseline>;
  /** Treated side of the nail in a picture with the toe pointing up, as recorded on the day. */
  readonly treatedSide?: ToldSide | null;
  /** Earlier visits of the same toe. */
  readonly earlier?: readonly EarlierVisit[];
}

/**
 * Analyses one file.
 *
 * @param file bytes as received
 * @param request card, print check, context
 * @param ports the outside world
 * @returns the analysis, or why the file cannot be read as a photo
 * @example const result = await analysePhoto(bytes, request, ports); if (result.analysed) result.analysis.reasons
 */
export async function analysePhoto(file: Uint8Array, request: AnalysisRequest, ports: AnalysisPorts): Promise<AnalysisResult> {
  const geometry = scaleGeometry(request.geometry, request.print.scale);
  let glance: CardLook | null = null;
  const decoded = await ports.decodePhoto(file, (copy) => {
    glance = quickLook(copy, geometry, ports.detectFiducials);
    return neededPart(glance, geometry);
  });
  try {
    return await analyseDecoded(decoded, glance, geometry, request, ports);
  } catch (error) {
    // Some step had to look beyond the part that a glance at the photo had shown to be needed.
    if (!(error instanceof NotDecoded)) throw error;
    return analyseDecoded(await ports.decodePhoto(file), glance, geometry, request, ports);
  }
}

async function analyseDecoded(decoded: Decoded, glance: CardLook | null, geometry: CardGeometry, request: AnalysisRequest, ports: AnalysisPorts): Promise<AnalysisResult> {
  if (!decoded.decoded) return { analysed: false, refusal: decoded.refusal };
  return { analysed: true, analysis: await analyseUpright(decoded.photo, glance, geometry, request, ports) };
}

async function analyseUpright(photo: UprightPhoto, glance: CardLook | null, geometry: CardGeometry, request: AnalysisRequest, ports: AnalysisPorts): Promise<Analysis> {
  const empty: Analysis = { photo, methodVersion: METHOD_VERSION, reasons: [], card: null, colour: null, matchedToBaseline: false, colours: null, fields: null, segmentation: null, measurement: null };
  const early = gatesBeforeCard(photo, request.context);
  if (early.some((reason) => reason.gate === 'notAPhotograph')) return { ...empty, reasons: early };

  const search = findCard(photo, geometry, ports.detectFiducials, glance);
  if (!search.found) return { ...empty, reasons: [...early, search.reason] };
  const card = seeCard(photo, search.fit, geometry, request.print, ports);
  const baseline = baselineOf(request, card.serial);
  const { colour, light } = readLight(photo, search.fit, geometry, baseline ? knowledgeFromBaseline(baseline) : request.knowledge);
  const reasons = [...early, ...poseGates(card.pose.tiltDeg, card.pxPerMm, card.edgeSpreadMm), ...light];
  if (!colour || light.length > 0) return { ...empty, card, colour, reasons };
  const seen = { ...empty, card, colour, matchedToBaseline: baseline !== null };

  const whole = reflectanceMap(photo, search.fit, geometry, colour, baseline);
  const { map, fields } = cropToToe(whole, await ports.inferTissue(whole));
  const colours = { ...map, erythemaIndex: erythemaIndexMap(map) };
  const told = request.treatedSide ?? sideOfVisits(request.earlier ?? []);
  const found = segmentToe(colours, fields, told);
  const all: GateReason[] = [...reasons, ...toeGates(colours, found, geometry)];
  if (all.length > 0) return { ...seen, colours, fields, segmentation: found, reasons: all };
  const a65 = a65Map(colours, colour.paperLight, fields.toe);
  const measurement = carryOver(measureSegmentation(found, card, fields, a65), request.earlier ?? []);
  const { nailFoldMargin, marginLateral, cutEdge } = measurement.input.outlines;
  return { ...seen, colours, fields, segmentation: { ...found, nailFoldMargin, marginLateral, cutEdge }, measurement };
}

/** What is known of this very print from an earlier photo. */
function baselineOf({ baseline, baselines }: AnalysisRequest, serial: string | null): CardBaseline | null {
  return baseline ?? (serial === null ? null : (baselines?.get(serial) ?? null));
}

function readLight(
  photo: UprightPhoto,
  fit: CardFit,
  geometry: CardGeometry,
  knowledge: CardKnowledge = HOME_CARD,
): { colour: CardColour | null; light: GateReason[] } {
  const paper = readPaper(photo, fit.imageFromCard, geometry);
  const read = readCardColour(readPatches(photo, fit.imageFromCard, geometry), paper, knowledge);
  const colour = 'unread' in read ? null : read;
  const light = lightGates(paper, colour?.shading ?? null);
  // Without enough bare paper there is no light to judge by: the card is covered.
  if (!colour && light.length === 0) light.push(gateReason('tooFewFiducials', null, null));
  return { colour, light };
}

function reflectanceMap(photo: UprightPhoto, fit: CardFit, geometry: CardGeometry, colour: CardColour, baseline: CardBaseline | null): ReflectanceMap {
  const map = resampleMap(photo, fit.imageFromCard, toeGrid(geometry), colour.tables);
  const corrected = correctMap(map, colour.shading);
  return baseline ? matchMap(corrected, matchToBaseline(colour.patches, baseline.patches)) : corrected;
}
