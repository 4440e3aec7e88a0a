/**
 * The resistors of a network that is being eliminated: per node a list of half resistors, each knowing its twin. One
 * list serves one network after another: making its arrays takes as long as eliminating a small network.
 */
export class ResistorList {
  /** Per node, how many resistors it has; parallel ones count each until they are merged. */
  degree = new Int32Array(0);
  /** The neighbours of the node that was removed last, and the conductance to each; as many as `remove` said. */
  readonly around: number[] = [];
  readonly aroundS: number[] = [];
  #first = new Int32Array(0);
  /** -1 at every node between two calls. */
  #mark = new Int32Array(0);
  #far = new Int32Array(256);
  #next = new Int32Array(256);
  #twin = new Int32Array(256);
  #valueS = new Float64Array(256);
  #count = 0;

  /** Begins anew, without a resistor, with room for so many nodes. */
  reset(nodeCount: number): void {
    this.#count = 0;
    if (this.degree.length < nodeCount) {
      const room = 2 * nodeCount;
      this.degree = new Int32Array(room);
      this.#first = new Int32Array(room);
      this.#mark = new Int32Array(room).fill(-1);
    }
    this.degree.fill(0, 0, nodeCount);
    this.#first.fill(-1, 0, nodeCount);
  }

  join(a: number, b: number, valueS: number): void {
    if (this.#count + 2 > this.#far.length) this.#grow();
    const left = this.#half(a, b, valueS);
    const right = this.#half(b, a, valueS);
    this.#twin[left] = right;
    this.#twin[right] = left;
  }

  /** Takes a node out and gives how many neighbours it had: `around` names each once, `aroundS` what leads to it. */
  remove(node: number): number {
    const { around, aroundS, degree } = this;
    const far = this.#far;
    let count = 0;
    for (let half = this.#first[node]!; half >= 0; half = this.#next[half]!) {
      const other = far[half]!;
      if (other < 0) continue;
      const seen = this.#mark[other]!;
      if (seen >= 0) aroundS[seen]! += this.#valueS[half]!;
      else {
        this.#mark[other] = count;
        around[count] = other;
        aroundS[count] = this.#valueS[half]!;
        count++;
      }
      far[this.#twin[half]!] = -1;
      degree[other]!--;
    }
    for (let i = 0; i < count; i++) this.#mark[around[i]!] = -1;
    return count;
  }

  /** Joins every pair of the `count` neighbours of an eliminated node by the conductance g_i g_j / G. */
  mesh(count: number, sumS: number): void {
    const { around, aroundS } = this;
    if (count < 2) return;
    if (count === 2) {
      // Parallel resistors may arise; they are merged when one of their ends goes.
      this.join(around[0]!, around[1]!, (aroundS[0]! / sumS) * aroundS[1]!);
      return;
    }
    for (let i = 0; i + 1 < count; i++) {
      const a = around[i]!;
      this.#markNeighbours(a);
      for (let j = i + 1; j < count; j++) {
        const throughS = (aroundS[i]! / sumS) * aroundS[j]!;
        const known = this.#mark[around[j]!]!;
        if (known < 0) this.join(a, around[j]!, throughS);
        else {
          this.#valueS[known]! += throughS;
          this.#valueS[this.#twin[known]!]! += throughS;
        }
      }
      this.#unmarkNeighbours(a);
    }
  }

  #half(at: number, far: number, valueS: number): number {
    const half = this.#count++;
    this.#far[half] = far;
    this.#valueS[half] = valueS;
    this.#next[half] = this.#first[at]!;
    this.#first[at] = half;
    this.degree[at]!++;
    return half;
  }

  /** Marks the neighbours with the half resistor to each; dead halves are unlinked on the way. */
  #markNeighbours(node: number): void {
    let before = -1;
    for (let half = this.#first[node]!; half >= 0; half = this.#next[half]!) {
      if (this.#far[half]! >= 0) {
        this.#mark[this.#far[half]!] = half;
        before = half;
      } else if (before < 0) this.#first[node] = this.#next[half]!;
      else this.#next[before] = this.#next[half]!;
    }
  }

  #unmarkNeighbours(node: number): void {
    for (let half = this.#first[node]!; half >= 0; half = this.#next[half]!) {
      if (this.#far[half]! >= 0) this.#mark[this.#far[half]!] = -1;
    }
  }

  #grow(): void {
    const wider = <T extends Int32Array | Float64Array>(old: T, fresh: T): T => {
      fresh.set(old);
      return fresh;
    };
    const room = 2 * this.#far.length;
    this.#far = wider(this.#far, new Int32Array(room));
    this.#next = wider(this.#next, new Int32Array(room));
    this.#twin = wider(this.#twin, new Int32Array(room));
    this.#valueS = wider(this.#valueS, new Float64Array(room));
  }
}
