import type { Bonjour, Service, ServiceConfig } from "bonjour-service";
import type { FoundLead } from "../../shared/protocol/lead-view.ts";

/** The service a lead is found by on the local network (DNS-SD, RFC 6763, over multicast DNS, RFC 6762). */
const type = "spurwise-lead";
const lookMs = 1500;

/** Where a service is, the address a machine of this network reaches first. */
function addressOf({ addresses = [], host, port }: Service): string {
  const [first = host] = addresses.filter((address) => address.includes("."));
  return `${first}:${port}`;
}

/** Multicast DNS of this machine, loaded when it is first asked for. A network that has none is a network without it. */
export class LeadNames {
  readonly #note: (sentence: string) => void;
  /** The address of the interface to use; that of the system where left out. */
  readonly #at: string | undefined;
  #bonjour: Promise<Bonjour> | undefined;
  #isPublished = false;

  constructor(note: (sentence: string) => void, at?: string) {
    this.#note = note;
    this.#at = at;
  }

  /** Is found under a name from now on. */
  async publish(name: string, port: number): Promise<void> {
    const bonjour = await this.#open();
    await this.hide();
    this.#isPublished = true;
    bonjour.publish({ name, type, port, probe: false });
  }

  /** Is found no more. */
  async hide(): Promise<void> {
    const bonjour = await this.#bonjour;
    this.#isPublished = false;
    if (bonjour) await new Promise<void>((done) => bonjour.unpublishAll(() => done()));
  }

  /** The leads that answer within a moment. Nothing stays open for it where nothing is published from here. */
  async find(): Promise<FoundLead[]> {
    const bonjour = await this.#open();
    const found = new Map<string, FoundLead>();
    const browser = bonjour.find({ type }, (service) => {
      const address = addressOf(service);
      found.set(address, { name: service.name, address });
    });
    await new Promise((resolve) => setTimeout(resolve, lookMs));
    browser.stop();
    if (!this.#isPublished) await this.close();
    return [...found.values()].sort((a, b) => (a.name < b.name ? -1 : 1));
  }

  async close(): Promise<void> {
    const bonjour = await this.#bonjour;
    this.#bonjour = undefined;
    if (!bonjour) return;
    await new Promise<void>((done) => bonjour.unpublishAll(() => bonjour.destroy(() => done())));
  }

  #open(): Promise<Bonjour> {
    this.#bonjour ??= import("bonjour-service").then(({ Bonjour: Made }) => {
      const options = (
        this.#at === undefined ? {} : { interface: this.#at, bind: "0.0.0.0" }
      ) as Partial<ServiceConfig>;
      return new Made(options, (error: Error) => this.#note(`lead: no finding by name: ${error.message}`));
    });
    return this.#bonjour;
  }
}
