import type { MapGrid } from '../rectify/millimetre-map';
import type { PointPx } from '../units';

/** How little it costs to draw a line through each pixel of a map: near 0 on an edge, 1 where there is none. */
export interface EdgeCost {
  readonly grid: MapGrid;
  /** One value per pixel, above 0. */
  readonly cost: Float32Array;
}

/** The eight neighbours: rows, columns, length. */
const STEPS = [-1, 0, 1].flatMap((down) => [-1, 0, 1].map((across) => ({ down, across, length: Math.hypot(down, across) }))).filter(({ length }) => length > 0);

/**
 * The path between two pixels that costs least: each step costs its length times the mean of its two pixels. Looked for
 * in a window around both, for a line that a person draws does not wander far off.
 *
 * @param edge the map's costs
 * @param from first pixel, whole row and column inside the map
 * @param to last pixel
 * @param beyondPx how far the window reaches beyond the two, pixels
 * @returns all pixels from the first to the last; the same map always gives the same path
 * Source: Dijkstra, Numerische Mathematik 1959;1:269–271; as "live wire" Barrett and Mortensen, Med Image Anal 1997;1:331–341.
 * @example cheapestPath({ grid: { originAcrossMm: 0, originDownMm: 0, pxPerMm: 1, widthPx: 3, heightPx: 1 }, cost: new Float32Array([1, 1, 1]) }, { row: 0, column: 0 }, { row: 0, column: 2 }, 0).length // 3
 */
export function cheapestPath({ grid, cost }: EdgeCost, from: PointPx, to: PointPx, beyondPx: number): PointPx[] {
  const window = windowAround(grid, from, to, beyondPx);
  const { top, left, widthPx, heightPx } = window;
  const at = (row: number, column: number) => (row - top) * widthPx + column - left;
  const start = at(from.row, from.column);
  const end = at(to.row, to.column);
  const costs = new Float64Array(widthPx * heightPx).fill(Infinity);
  const cameFrom = new Int32Array(widthPx * heightPx).fill(-1);
  const price = (place: number) => cost[(Math.floor(place / widthPx) + top) * grid.widthPx + (place % widthPx) + left];
  costs[start] = 0;
  const queue = new PlaceQueue(costs);
  queue.push(start);
  for (let place = queue.pop(); place !== end; place = queue.pop()) {
    const row = Math.floor(place / widthPx);
    const column = place % widthPx;
    for (const { down, across, length } of STEPS) {
      const [r, c] = [row + down, column + across];
      if (r < 0 || c < 0 || r >= heightPx || c >= widthPx) continue;
      const next = r * widthPx + c;
      const total = costs[place] + (length * (price(place) + price(next))) / 2;
      if (total >= costs[next]) continue;
      costs[next] = total;
      cameFrom[next] = place;
      queue.push(next);
    }
  }
  const path: PointPx[] = [];
  for (let place = end; place >= 0; place = cameFrom[place]) path.push({ row: Math.floor(place / widthPx) + top, column: (place % widthPx) + left });
  return path.reverse();
}

function windowAround(grid: MapGrid, a: PointPx, b: PointPx, beyondPx: number): { top: number; left: number; widthPx: number; heightPx: number } {
  const top = Math.max(0, Math.min(a.row, b.row) - beyondPx);
  const left = Math.max(0, Math.min(a.column, b.column) - beyondPx);
  const bottom = Math.min(grid.heightPx - 1, Math.max(a.row, b.row) + beyondPx);
  const right = Math.min(grid.widthPx - 1, Math.max(a.column, b.column) + beyondPx);
  return { top, left, widthPx: right - left + 1, heightPx: bottom - top + 1 };
}

/** Places by what they cost, cheapest first: a binary heap. A place that became cheaper stands in it twice. */
class PlaceQueue {
  private readonly places: number[] = [];
  private readonly keys: number[] = [];

  constructor(private readonly costs: Float64Array) {}

  push(place: number): void {
    const key = this.costs[place];
    let at = this.places.length;
    while (at > 0) {
      const above = (at - 1) >> 1;
      if (this.keys[above] <= key) break;
      this.set(at, this.places[above], this.keys[above]);
      at = above;
    }
    this.set(at, place, key);
  }

  pop(): number {
    const first = this.places[0];
    const place = this.places.pop() as number;
    const key = this.keys.pop() as number;
    const size = this.places.length;
    for (let at = 0; size > 0; ) {
      const left = 2 * at + 1;
      const least = left + 1 < size && this.keys[left + 1] < this.keys[left] ? left + 1 : left;
      if (left >= size || this.keys[least] >= key) {
        this.set(at, place, key);
        break;
      }
      this.set(at, this.places[least], this.keys[least]);
      at = least;
    }
    return first;
  }

  private set(at: number, place: number, key: number): void {
    this.places[at] = place;
    this.keys[at] = key;
  }
}
