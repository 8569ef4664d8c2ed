import Database from 'better-sqlite3';

/** What every SQLite file begins with. */
export const SQLITE_HEADER = 'SQLite format 3\u0000';
/** 'STKL' as four bytes: what tells a house file from any other SQLite file. */
export const APPLICATION_ID = 0x53_54_4b_4c;

const factTable = (name: string) => `
  create table ${name} (
    id text not null primary key,
    position integer not null,
    facts text not null check (json_valid(facts))
  ) strict, without rowid`;

/** Forward only: a step never changes once it has been released. Step n makes schema version n. */
const MIGRATIONS: readonly (readonly string[])[] = [
  [
    `create table house (
      id integer not null primary key check (id = 1),
      facts text not null check (json_valid(facts)),
      revision integer not null
    ) strict`,
    ...['covering', 'room', 'stock', 'offer', 'delivery'].map(factTable),
    `create table edit (
      number integer not null primary key,
      name text not null,
      changes text not null check (json_valid(changes)),
      is_undone integer not null check (is_undone in (0, 1))
    ) strict`,
  ],
  [factTable('picture')],
  ['supplier', 'placed_order', 'sent_back', 'leftover', 'matching', 'run_choice'].map(factTable),
  [
    factTable('photo'),
    `create table photo_image (
      id text not null primary key,
      image text not null
    ) strict`,
  ],
  ['task_choice', 'own_material', 'expense'].map(factTable),
  ['alter table house add column changed text'],
];

export const SCHEMA_VERSION = MIGRATIONS.length;

/** Brings a file to a schema version, usually this program's; each step is one transaction with its version number. */
export function migrate(database: Database.Database, to = SCHEMA_VERSION): void {
  const version = database.pragma('user_version', { simple: true }) as number;
  MIGRATIONS.slice(version, to).forEach((statements, index) => {
    database.transaction(() => {
      for (const statement of statements) database.exec(statement);
      database.pragma(`user_version = ${version + index + 1}`);
    })();
  });
}

/** All that a file's schema holds, as text. */
export function schemaOf(database: Database.Database): string {
  const made = database.prepare("select type, name, sql from sqlite_schema where name not like 'sqlite\\_%' escape '\\' order by type, name").raw().all() as readonly (readonly string[])[];
  return made.map((one) => `-- ${one[0]} ${one[1]}\n${one[2]};\n`).join('');
}

const schemas = new Map<number, string>();

/** What a file of a schema version holds, and nothing else. */
export function schemaAt(version: number): string {
  const known = schemas.get(version) ?? madeAnew(version);
  schemas.set(version, known);
  return known;
}

function madeAnew(version: number): string {
  const database = new Database(':memory:');
  migrate(database, version);
  const schema = schemaOf(database);
  database.close();
  return schema;
}
