/** The reason that a function of the library gives for refusing its input, without its own name before it. */
export function plainReason(error: unknown): string {
  if (!(error instanceof RangeError) && !(error instanceof Error && error.name === 'LeadError')) throw error;
  return error.message.replace(/^\w+: /, '').replace(/; (see unreached|use centerPath).*$/, '');
}
