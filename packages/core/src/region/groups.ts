/** Numbers joined into groups (disjoint-set forest); each group is spoken for by its preferred member. */
export class Groups {
  private readonly parent: Int32Array;

  /** @param prefer whether the first of two members should speak for a group; the smaller one does unless given. */
  constructor(
    count: number,
    private readonly prefer: ((a: number, b: number) => boolean) | null = null,
  ) {
    this.parent = new Int32Array(count);
    for (let i = 0; i < count; i++) this.parent[i] = i;
  }

  /** The member that speaks for the group of `i`. */
  leader(i: number): number {
    const { parent } = this;
    let at = i;
    while (parent[at] !== at) {
      const up = parent[parent[at] as number] as number;
      parent[at] = up;
      at = up;
    }
    return at;
  }

  /** Makes one group of two. */
  join(a: number, b: number): void {
    const p = this.leader(a);
    const q = this.leader(b);
    if (p === q) return;
    if (this.prefer === null ? p < q : this.prefer(p, q)) this.parent[q] = p;
    else this.parent[p] = q;
  }

  /** The leader of each. */
  leaders(): Int32Array {
    const { parent } = this;
    for (let i = 0; i < parent.length; i++) parent[i] = this.leader(i);
    return parent;
  }
}
