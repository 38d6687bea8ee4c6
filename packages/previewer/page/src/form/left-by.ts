/** Whether the keys have gone from an element to somewhere else on the page, and not only from one of its fields. */
export function leftBy({ currentTarget, relatedTarget }: FocusEvent): boolean {
  return relatedTarget instanceof Node && !(currentTarget as Element).contains(relatedTarget);
}
