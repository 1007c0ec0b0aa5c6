import type { Region } from '../segment/segmentation';
import { budgeted, refused } from './budgeted';
import type { Budgeted } from './budgeted';
import type { BudgetTerm } from './combine-budget';
import {
  BOUNDARY_CORRELATION_MM,
  INDEX_GAIN_RELATIVE_U,
  LEAST_INDEX_SHARE,
  LOAD_RIM_MM,
  REFERENCE_DELTA_A_U,
  REFERENCE_EI_U,
} from './constants';
import { meanInMask } from './mean-in-mask';
import type { MeasureInput, RednessPlanes } from './measure-input';
import { rednessLoad } from './redness-load';
import { rednessMask } from './redness-mask';
import { regionPerimeterMm } from './region-perimeter';
import { regionRefusal } from './region-refusal';
import { scaleTerms } from './scale-terms';
import { skinSlopeTerm } from './skin-slope-term';
import { splitBoundary } from './split-boundary';

/** The mask of the region with a rim of so many millimetres. */
type RimMask = (rimMm: number) => Uint8Array;

/** Three numbers are taken from the same few masks: each is filled once. */
function maskOncePerRim(outlines: MeasureInput['outlines'], planes: RednessPlanes): RimMask {
  const known = new Map<number, Uint8Array>();
  return (rimMm) => {
    const mask = known.get(rimMm) ?? rednessMask(outlines, planes.grid, rimMm);
    known.set(rimMm, mask);
    return mask;
  };
}

const typeA = (u: number, dof: number | null, sensitivity = 1): BudgetTerm => ({
  name: 'scatter',
  u,
  sensitivity,
  dof: dof ?? undefined,
});

/** How much `ofRim` changes when the edge moves outward by the boundary's uncertainty; steps of at least a pixel. */
function edgeTerms(region: Region, planes: RednessPlanes, ofRim: (rimMm: number) => number): BudgetTerm[] {
  const { commonMm, localMm } = splitBoundary(region.boundaryUMm);
  const stepMm = Math.max(commonMm, 1 / planes.grid.pxPerMm);
  const perMm = (ofRim(stepMm) - ofRim(0)) / stepMm;
  const averaging = Math.sqrt(Math.min(1, BOUNDARY_CORRELATION_MM / regionPerimeterMm(region.rings)));
  return [
    { name: 'boundaryCommon', u: commonMm, sensitivity: perMm },
    { name: 'boundaryLocal', u: localMm, sensitivity: perMm * averaging },
  ];
}

/** Mean excess of one plane inside the region. */
function meanExcess(
  input: MeasureInput,
  key: 'rednessDeltaEi' | 'rednessDeltaA',
  region: Region,
  planes: RednessPlanes,
  maskWith: RimMask,
): Budgeted {
  const plane = key === 'rednessDeltaEi' ? planes.excessEi : planes.deltaA;
  const inside = plane && meanInMask(plane, planes.grid, maskWith(0));
  if (!plane || !inside || inside.share < LEAST_INDEX_SHARE) return refused('evidenceTooWeak');
  const referenceU =
    key === 'rednessDeltaEi' ? (planes.referenceUEi ?? REFERENCE_EI_U) : (planes.referenceUDeltaA ?? REFERENCE_DELTA_A_U);
  const meanWithRim = (rimMm: number): number =>
    meanInMask(plane, planes.grid, maskWith(rimMm))?.mean ?? inside.mean;
  return budgeted(input, key, inside.mean, [
    typeA(inside.u, inside.dof),
    { name: 'referenceField', u: referenceU },
    { name: 'indexGain', u: INDEX_GAIN_RELATIVE_U, sensitivity: inside.mean },
    ...edgeTerms(region, planes, meanWithRim),
  ]);
}

/** Excess summed over the region and its rim. */
function load(input: MeasureInput, region: Region, planes: RednessPlanes, maskWith: RimMask): Budgeted {
  const inside = meanInMask(planes.excessEi, planes.grid, maskWith(0));
  const gathered = meanInMask(planes.excessEi, planes.grid, maskWith(LOAD_RIM_MM));
  if (!inside || !gathered || inside.share < LEAST_INDEX_SHARE) return refused('evidenceTooWeak');
  const sumWith = (rimMm: number): number => rednessLoad(planes.excessEi, planes.grid, maskWith(LOAD_RIM_MM + rimMm));
  const sum = sumWith(0);
  return budgeted(input, 'rednessLoad', sum, [
    ...scaleTerms(input.scale, sum, 'area'),
    skinSlopeTerm(input.scale, sum, 'area'),
    typeA(gathered.u, gathered.dof, gathered.areaMm2),
    { name: 'referenceField', u: planes.referenceUEi ?? REFERENCE_EI_U, sensitivity: gathered.areaMm2 },
    { name: 'indexGain', u: INDEX_GAIN_RELATIVE_U, sensitivity: sum },
    ...edgeTerms(region, planes, sumWith),
  ]);
}

/**
 * How red the region is: load over region and rim, mean excess of the erythema index and of a* (lab65) inside it.
 *
 * @param input of the whole stage; its planes hold NaN wherever there is no skin to judge
 * @returns {EI}·mm², {EI} and {deltaA}, each or a reason; where less than half of the region has an index the evidence is too weak
 * @example measureRedness({ ...input, redness: null }).rednessLoad.measurement // { notMeasured: 'evidenceTooWeak' }
 */
export function measureRedness(
  input: MeasureInput,
): Readonly<Record<'rednessLoad' | 'rednessDeltaEi' | 'rednessDeltaA', Budgeted>> {
  const { erythema } = input.outlines;
  const planes = input.redness;
  const refusal = regionRefusal(erythema, input.grid) ?? (planes === null ? 'evidenceTooWeak' : null);
  if (refusal !== null || erythema === null || planes === null) {
    const none = refused(refusal ?? 'noRegionFound');
    return { rednessLoad: none, rednessDeltaEi: none, rednessDeltaA: none };
  }
  const maskWith = maskOncePerRim(input.outlines, planes);
  return {
    rednessLoad: load(input, erythema, planes, maskWith),
    rednessDeltaEi: meanExcess(input, 'rednessDeltaEi', erythema, planes, maskWith),
    rednessDeltaA: meanExcess(input, 'rednessDeltaA', erythema, planes, maskWith),
  };
}
