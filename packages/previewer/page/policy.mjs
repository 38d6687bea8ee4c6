/**
 * What the page may load and run: its own files, and nothing else. Nothing is fetched at run time, nothing is sent,
 * and no script or style stands in the markup. The one text that is run as code is the worker, which is part of the
 * page's own script; a worker made so is bound by the same policy.
 */
const POLICY = {
  'default-src': "'none'",
  'script-src': "'self'",
  'worker-src': 'blob:',
  'style-src': "'self'",
  'img-src': "'self'",
  'base-uri': "'none'",
  'form-action': "'none'",
};

/** @param {Record<string, string>} policy */
const written = (policy) =>
  Object.entries(policy)
    .map(([directive, sources]) => `${directive} ${sources}`)
    .join('; ');

/** The policy for the page's own `<meta>`, so that it holds wherever the folder is put. */
export const META_POLICY = written(POLICY);

/** Headers for a server of the page. Whether others may frame it can only be said in a header. */
export const HEADERS = {
  'Content-Security-Policy': written({ ...POLICY, 'frame-ancestors': "'none'" }),
  'Cross-Origin-Opener-Policy': 'same-origin',
  'Referrer-Policy': 'no-referrer',
  'X-Content-Type-Options': 'nosniff',
};
