/** Which of n things are joined, kept while joins are added; near-linear. */
export class DisjointSets {
  private readonly parents: Int32Array;

  constructor(count: number) {
    // A plain loop: Int32Array.from with a function takes several times as long.
    this.parents = new Int32Array(count);
    for (let index = 0; index < count; index++) this.parents[index] = index;
  }

  /** The one member that stands for all that are joined with this one. */
  find(member: number): number {
    const { parents } = this;
    let at = member;
    while (parents[at] !== at) {
      const parent = parents[at] ?? at;
      const grand = parents[parent] ?? parent;
      parents[at] = grand;
      at = grand;
    }
    return at;
  }

  /** Joins two; the lower index stands for both, so the result does not hang on the order of joining. */
  join(a: number, b: number): void {
    const rootA = this.find(a);
    const rootB = this.find(b);
    if (rootA < rootB) this.parents[rootB] = rootA;
    else this.parents[rootA] = rootB;
  }
}
