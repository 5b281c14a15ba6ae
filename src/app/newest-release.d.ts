/** The newest of `content/releases`: the build says which (`astro.config.mjs`). */
declare module 'newest-release' {
  const release: import('../note/release.ts').Release;
  export default release;
}
