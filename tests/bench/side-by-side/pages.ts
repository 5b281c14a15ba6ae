/** One page of the guide as the apps beside ours show it. */
export interface Page {
  readonly title: string;
  readonly lines: readonly string[];
  readonly why: string;
  readonly answers: readonly { readonly id: string; readonly to: string; readonly label: string }[];
}

export interface Pages {
  readonly start: string;
  readonly pages: Readonly<Record<string, Page>>;
}

declare global {
  /** Put in when an app is built. */
  const GUIDE: Pages;
}
