-- table covering
CREATE TABLE covering (
    id text not null primary key,
    position integer not null,
    facts text not null check (json_valid(facts))
  ) strict, without rowid;
-- table delivery
CREATE TABLE delivery (
    id text not null primary key,
    position integer not null,
    facts text not null check (json_valid(facts))
  ) strict, without rowid;
-- table edit
CREATE TABLE edit (
      number integer not null primary key,
      name text not null,
      changes text not null check (json_valid(changes)),
      is_undone integer not null check (is_undone in (0, 1))
    ) strict;
-- table expense
CREATE TABLE expense (
    id text not null primary key,
    position integer not null,
    facts text not null check (json_valid(facts))
  ) strict, without rowid;
-- table house
CREATE TABLE house (
      id integer not null primary key check (id = 1),
      facts text not null check (json_valid(facts)),
      revision integer not null
    , changed text) strict;
-- table leftover
CREATE TABLE leftover (
    id text not null primary key,
    position integer not null,
    facts text not null check (json_valid(facts))
  ) strict, without rowid;
-- table matching
CREATE TABLE matching (
    id text not null primary key,
    position integer not null,
    facts text not null check (json_valid(facts))
  ) strict, without rowid;
-- table offer
CREATE TABLE offer (
    id text not null primary key,
    position integer not null,
    facts text not null check (json_valid(facts))
  ) strict, without rowid;
-- table own_material
CREATE TABLE own_material (
    id text not null primary key,
    position integer not null,
    facts text not null check (json_valid(facts))
  ) strict, without rowid;
-- table photo
CREATE TABLE photo (
    id text not null primary key,
    position integer not null,
    facts text not null check (json_valid(facts))
  ) strict, without rowid;
-- table photo_image
CREATE TABLE photo_image (
      id text not null primary key,
      image text not null
    ) strict;
-- table picture
CREATE TABLE picture (
    id text not null primary key,
    position integer not null,
    facts text not null check (json_valid(facts))
  ) strict, without rowid;
-- table placed_order
CREATE TABLE placed_order (
    id text not null primary key,
    position integer not null,
    facts text not null check (json_valid(facts))
  ) strict, without rowid;
-- table room
CREATE TABLE room (
    id text not null primary key,
    position integer not null,
    facts text not null check (json_valid(facts))
  ) strict, without rowid;
-- table run_choice
CREATE TABLE run_choice (
    id text not null primary key,
    position integer not null,
    facts text not null check (json_valid(facts))
  ) strict, without rowid;
-- table sent_back
CREATE TABLE sent_back (
    id text not null primary key,
    position integer not null,
    facts text not null check (json_valid(facts))
  ) strict, without rowid;
-- table stock
CREATE TABLE stock (
    id text not null primary key,
    position integer not null,
    facts text not null check (json_valid(facts))
  ) strict, without rowid;
-- table supplier
CREATE TABLE supplier (
    id text not null primary key,
    position integer not null,
    facts text not null check (json_valid(facts))
  ) strict, without rowid;
-- table task_choice
CREATE TABLE task_choice (
    id text not null primary key,
    position integer not null,
    facts text not null check (json_valid(facts))
  ) strict, without rowid;
