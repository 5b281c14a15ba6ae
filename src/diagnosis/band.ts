/** Codes of the words for a share; the words themselves belong to the page. */
export const bands = ['likely', 'possible', 'unlikely', 'very-unlikely'] as const;
export type Band = (typeof bands)[number];

/** Least share of each band. Our own choice: one fault in two, one in ten, one in a hundred. */
const floors: Readonly<Record<Exclude<Band, 'very-unlikely'>, number>> = {
  likely: 0.5,
  possible: 0.1,
  unlikely: 0.01,
};

/** The band of a share in [0, 1]; a page shows it together with the number, never alone. */
export function band(share: number): Band {
  if (share >= floors.likely) return 'likely';
  if (share >= floors.possible) return 'possible';
  return share >= floors.unlikely ? 'unlikely' : 'very-unlikely';
}
