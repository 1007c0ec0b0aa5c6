/**
 * The tissue model in ONNX Runtime: map colours in, tissue fields out. Loaded once per process; the weights are part
 * of the project and nothing is fetched.
 */
import { readFile } from 'node:fs/promises';
import { InferenceSession, Tensor } from 'onnxruntime-node';
import { type ModelCard, MODEL_CHANNELS, modelInput } from '../../segment/model-input';
import type { TissueFields } from '../../segment/segmentation';
import type { ReflectanceMap } from '../../colour/reflectance-map';

const WEIGHTS = new URL('../../segment/weights/toe-tissue.onnx', import.meta.url);
const CARD = new URL('../../segment/weights/toe-tissue.json', import.meta.url);
/** Two cores are what a small clinic's machine has; more gain little on a map this small. */
const THREADS = 2;
/** Threads of the runtime wait by turning in circles, which takes a quarter more of a core, and more where another program wants it. */
const WAIT_ASLEEP = { session: { intra_op: { allow_spinning: '0' } } };

export interface TissueModel {
  readonly card: ModelCard;
  infer(map: ReflectanceMap): Promise<TissueFields>;
}

let loading: Promise<TissueModel> | null = null;

/** The model, loaded at the first call. */
export function tissueModel(): Promise<TissueModel> {
  loading ??= load();
  return loading;
}

async function load(): Promise<TissueModel> {
  const card = JSON.parse(await readFile(CARD, 'utf8')) as ModelCard;
  const session = await InferenceSession.create(await readFile(WEIGHTS), { intraOpNumThreads: THREADS, graphOptimizationLevel: 'all', extra: WAIT_ASLEEP });
  return { card, infer: (map) => infer(session, card, map) };
}

async function infer(session: InferenceSession, card: ModelCard, map: ReflectanceMap): Promise<TissueFields> {
  const { heightPx, widthPx } = map.grid;
  const input = new Tensor('float32', modelInput(map, card), [1, MODEL_CHANNELS, heightPx, widthPx]);
  const output = await session.run({ [session.inputNames[0]]: input });
  const data = output[session.outputNames[0]].data as Float32Array;
  const pixels = heightPx * widthPx;
  const plane = (name: string): Float32Array => {
    const at = card.output.planes.indexOf(name);
    if (at < 0) throw new Error(`The tissue model's card names no plane ${name}: weights and program do not belong together.`);
    return data.subarray(at * pixels, (at + 1) * pixels);
  };
  return {
    grid: map.grid,
    toe: plane('toe'),
    nailPlate: plane('nailPlate'),
    groove: plane('groove'),
    nailUnit: plane('nailUnit'),
    foldMargin: plane('foldMarginTreated'),
    raw: plane('raw'),
    macerated: plane('macerated'),
    erythema: plane('erythema'),
  };
}
