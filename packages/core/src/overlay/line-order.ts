/** So many steps from where the search has led another list is made for it. */
const PATIENCE = 16;

/**
 * Edges that a rising line meets, from left to right. An edge is put in, taken out and asked for its neighbours in one step;
 * a place is found in as many as a search by halves takes, in a list of how the edges stood some time ago.
 */
export class LineOrder {
  /** Neighbours by edge; the number of all edges stands for both ends. */
  private readonly left: Int32Array;
  private readonly right: Int32Array;
  private readonly isIn: Int32Array;
  /** Of an edge that has been taken out, one that stands where it has stood. */
  private readonly heir: Int32Array;
  private readonly end: number;
  private list: Int32Array;
  private listed = 0;
  private size = 0;

  /** @param count edges, by number */
  constructor(count: number) {
    // One block of memory: to have many costs more than all that is done with them where edges are few.
    const lists = new Int32Array(4 * count + 4);
    const list = (k: number) => lists.subarray(k * (count + 1), (k + 1) * (count + 1));
    this.left = list(0);
    this.right = list(1);
    this.isIn = list(2);
    this.heir = list(3);
    this.list = new Int32Array(PATIENCE);
    this.end = count;
    this.left[count] = count;
    this.right[count] = count;
    this.isIn[count] = 1;
  }

  isEmpty(): boolean {
    return this.size === 0;
  }

  has(edge: number): boolean {
    return this.isIn[edge] === 1;
  }

  before(edge: number): number {
    return this.left[edge] as number;
  }

  after(edge: number): number {
    return this.right[edge] as number;
  }

  /** Makes neighbours of two. */
  join(left: number, right: number): void {
    this.right[left] = right;
    this.left[right] = left;
  }

  /** Puts an edge in, to the left of another; its own left neighbour is still to be joined. False if it is in already. */
  put(edge: number, right: number): boolean {
    if (this.isIn[edge] === 1) return false;
    this.isIn[edge] = 1;
    this.size++;
    this.join(edge, right);
    return true;
  }

  /** Takes an edge out; what is left and right of it is still to be joined. */
  take(edge: number, heir: number): void {
    this.isIn[edge] = 0;
    this.heir[edge] = heir;
    this.size--;
  }

  /** The last edge, from left to right, of which something holds that holds of none after one of which it does not. */
  lastLeft(isLeft: (edge: number) => boolean): number {
    const { end, right } = this;
    let lo = 0;
    let hi = this.listed;
    while (lo < hi) {
      const middle = (lo + hi) >> 1;
      const edge = this.standing(this.list[middle] as number);
      if (edge === end || isLeft(edge)) lo = middle + 1;
      else hi = middle;
    }
    let at = lo === 0 ? end : this.standing(this.list[lo - 1] as number);
    let steps = 0;
    for (let next = right[at] as number; next !== end && isLeft(next); next = right[next] as number) {
      at = next;
      steps++;
    }
    if (steps > PATIENCE) this.makeList();
    return at;
  }

  /** The edge that stands where one stood when the list was made, or the next to the left. */
  private standing(edge: number): number {
    const { heir, isIn } = this;
    let at = edge;
    while (isIn[at] === 0) at = heir[at] as number;
    // The way is made shorter for the next one who asks.
    for (let e = edge; isIn[e] === 0; ) {
      const next = heir[e] as number;
      heir[e] = at;
      e = next;
    }
    return at;
  }

  private makeList(): void {
    const { end, right } = this;
    if (this.size > this.list.length) this.list = new Int32Array(2 * this.size);
    let n = 0;
    for (let e = right[end] as number; e !== end; e = right[e] as number) this.list[n++] = e;
    this.listed = n;
  }
}
