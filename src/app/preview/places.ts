/** Where a range's parts are, as its drawing for technicians has them. Pure. */

/** A place of the drawing: its outline, and where its number stands. */
interface Spot {
  readonly path: string;
  readonly at: readonly [x: number, y: number];
}

const circle = (x: number, y: number, r: number): string =>
  `M${x - r} ${y}a${r} ${r} 0 1 0 ${2 * r} 0a${r} ${r} 0 1 0 ${-2 * r} 0z`;

/**
 * A range cut open along its side, the door to the left, as whoever lifts the top and takes the back
 * off comes upon its parts. The places are those of `content/model/faults.yaml`.
 */
export const spots: Readonly<Record<string, Spot>> = {
  latch: { path: 'M108 78H70v13h6v-7h32z', at: [94, 68] },
  motor: { path: `M108 81h9${circle(127, 80, 10)}`, at: [127, 58] },
  switch: { path: 'M137 78l6-3v-3h15v16h-15v-7z', at: [170, 80] },
  sensor: { path: 'M204 104h36v-8h4v8h8v6h-8v5h-4v-5h-36z', at: [194, 107] },
  door: { path: 'M58 94h17v64H58zM51 100v22h4v-22z', at: [38, 128] },
  broil: { path: 'M92 100h88v5H92z', at: [136, 115] },
  bake: { path: 'M92 146h124v5H92z', at: [152, 135] },
  fan: { path: circle(238, 132, 10), at: [216, 132] },
  cooling: { path: circle(206, 66, 9), at: [186, 66] },
  cutoff: { path: 'M244 76h13v12h-13z', at: [282, 82] },
  supply: { path: 'M246 128h14v12h-14z', at: [282, 132] },
  gas: { path: 'M246 146h14v10h-14z', at: [282, 152] },
  top: { path: 'M84 34h44v7H84zM176 34h44v7h-44z', at: [152, 30] },
};
/** The controls stand in the backguard, or in front where there is none. */
export const behind: typeof spots = {
  board: { path: 'M262 13h6v22h-6z', at: [286, 24] },
  panel: { path: 'M250 34l5-24h4l-5 24z', at: [238, 20] },
};
export const inFront: typeof spots = {
  board: { path: 'M64 49h26v7H64z', at: [100, 53] },
  panel: { path: 'M52 47h5v22h-5z', at: [38, 58] },
};
