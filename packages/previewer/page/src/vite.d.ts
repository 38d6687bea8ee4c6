interface ImportMeta {
  /** Vite puts the modules that match a pattern here when it builds. */
  glob<T>(pattern: string, options: { eager: true; import: 'default' }): Record<string, T>;
}

declare module '*?worker&inline' {
  const InlineWorker: new () => Worker;
  export default InlineWorker;
}

declare module '*.json?raw' {
  const text: string;
  export default text;
}
