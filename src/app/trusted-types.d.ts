export {};

declare global {
  /**
   * Trusted Types (W3C Working Draft), the part used here; absent in browsers that do not
   * know them. Opaque: only a policy makes one.
   */
  interface TrustedHTML {
    readonly __trusted: 'html';
  }
  interface TrustedScriptURL {
    readonly __trusted: 'script-url';
  }
  interface TrustedPolicy {
    createHTML(text: string): TrustedHTML;
    createScriptURL(url: string): TrustedScriptURL;
  }
  var trustedTypes:
    | {
        createPolicy(
          name: string,
          rules: {
            createHTML?: (text: string) => string;
            createScriptURL?: (url: string) => string;
          },
        ): TrustedPolicy;
      }
    | undefined;
}
