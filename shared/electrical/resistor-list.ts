/** The resistors of a network that is being eliminated: per node a list of half resistors, each knowing its twin. */
export class ResistorList {
  /** Per node, how many resistors it has; parallel ones count each until they are merged. */
  readonly degree: Int32Array;
  readonly #first: Int32Array;
  readonly #mark: Int32Array;
  #far: Int32Array;
  #next: Int32Array;
  #twin: Int32Array;
  #valueS: Float64Array;
  #count = 0;

  constructor(nodeCount: number, resistorCount: number) {
    this.degree = new Int32Array(nodeCount);
    this.#first = new Int32Array(nodeCount).fill(-1);
    this.#mark = new Int32Array(nodeCount).fill(-1);
    const room = 2 * resistorCount + 64;
    this.#far = new Int32Array(room);
    this.#next = new Int32Array(room);
    this.#twin = new Int32Array(room);
    this.#valueS = new Float64Array(room);
  }

  join(a: number, b: number, valueS: number): void {
    if (this.#count + 2 > this.#far.length) this.#grow();
    const left = this.#half(a, b, valueS);
    const right = this.#half(b, a, valueS);
    this.#twin[left] = right;
    this.#twin[right] = left;
  }

  /** Takes a node out: its neighbours, each once, with the conductance of all resistors to it. */
  remove(node: number): { around: number[]; valueS: number[] } {
    const around: number[] = [];
    const valueS: number[] = [];
    const far = this.#far;
    for (let half = this.#first[node]!; half >= 0; half = this.#next[half]!) {
      const other = far[half]!;
      if (other < 0) continue;
      const seen = this.#mark[other]!;
      if (seen >= 0) valueS[seen]! += this.#valueS[half]!;
      else {
        this.#mark[other] = around.length;
        around.push(other);
        valueS.push(this.#valueS[half]!);
      }
      far[this.#twin[half]!] = -1;
      this.degree[other]!--;
    }
    for (const other of around) this.#mark[other] = -1;
    return { around, valueS };
  }

  /** Joins every pair of the neighbours of an eliminated node by the conductance g_i g_j / G. */
  mesh(around: readonly number[], valueS: readonly number[], sumS: number): void {
    if (around.length < 2) return;
    if (around.length === 2) {
      // Parallel resistors may arise; they are merged when one of their ends goes.
      this.join(around[0]!, around[1]!, (valueS[0]! / sumS) * valueS[1]!);
      return;
    }
    for (let i = 0; i + 1 < around.length; i++) {
      const a = around[i]!;
      this.#markNeighbours(a);
      for (let j = i + 1; j < around.length; j++) {
        const throughS = (valueS[i]! / sumS) * valueS[j]!;
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
