import type { Pool } from "pg";
import { CentreStore } from "../../../server/centre/centre-store.ts";
import { migrateCentre } from "../../../server/centre/migrate-centre.ts";
import { PrivatePostgres } from "./private-postgres.ts";

/** A centre's store on an engine of its own, with one centre on its list: `north-hall`. */
export interface StoreOfItsOwn {
  postgres: PrivatePostgres;
  pool: Pool;
  store: CentreStore;
  remove: () => Promise<void>;
}

export async function storeOfItsOwn(programs: string): Promise<StoreOfItsOwn> {
  const postgres = new PrivatePostgres(programs);
  await postgres.start();
  const pool = postgres.pool();
  await migrateCentre(pool);
  const store = new CentreStore(pool);
  await store.keepCentre("north-hall", "North Hall");
  const remove = async (): Promise<void> => {
    await pool.end();
    await postgres.remove();
  };
  return { postgres, pool, store, remove };
}
