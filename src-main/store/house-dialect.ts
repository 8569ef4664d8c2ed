import type Database from 'better-sqlite3';
import { type DatabaseConnection, type Driver, SqliteDialect, SqliteDriver } from 'kysely';

/** SQLite as kysely speaks it, for a disk that fails: then SQLite ends the transaction itself, and to end it again would hide why. */
export class HouseDialect extends SqliteDialect {
  readonly #database: Database.Database;

  constructor(database: Database.Database) {
    super({ database });
    this.#database = database;
  }

  override createDriver(): Driver {
    return new HouseDriver(this.#database);
  }
}

class HouseDriver extends SqliteDriver {
  readonly #database: Database.Database;

  constructor(database: Database.Database) {
    super({ database });
    this.#database = database;
  }

  override async rollbackTransaction(connection: DatabaseConnection): Promise<void> {
    if (this.#database.inTransaction) await super.rollbackTransaction(connection);
  }
}
