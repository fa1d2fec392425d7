-- The journals of all holdings: one row per entry, only ever added to.
--
-- Texts are kept exactly as they are hashed. Days and instants are ISO 8601 text of fixed width, so they sort as text.
-- The table is kept in the order (holding, seq), so that a page of one journal lies together on disk.
create table entries (
    holding     text    not null,
    seq         integer not null check (seq >= 1),
    id          blob    not null check (length(id) = 16),
    happened_on text    not null,
    happened_at text             check (happened_at <> ''),
    recorded_at text    not null,
    recorded_by text    not null,
    kind        text    not null,
    body        text    not null,
    corrects    blob             check (length(corrects) = 16),
    reason      text,
    prev        blob    not null check (length(prev) = 32),
    hash        blob    not null check (length(hash) = 32),
    primary key (holding, seq),
    unique (holding, id),
    check ((corrects is null) = (reason is null))
) strict, without rowid;

create trigger entries_are_not_updated before update on entries
begin
    select raise(abort, 'the journal is append-only: an entry is never changed; correct it with a new entry');
end;

create trigger entries_are_not_deleted before delete on entries
begin
    select raise(abort, 'the journal is append-only: an entry is never deleted; strike it out with a new entry');
end;

-- `insert or replace` deletes without asking the trigger above. These two leave it nothing to replace.
create trigger entries_take_the_next_place before insert on entries
when new.seq <> 1 + coalesce((select max(seq) from entries where holding = new.holding), 0)
begin
    select raise(abort, 'the journal has no gaps and replaces nothing: an entry takes the next place');
end;

-- Ignored rather than refused, so that it looks like `on conflict (holding, id) do nothing`: no row was added.
create trigger entries_keep_their_id before insert on entries
when exists (select 1 from entries where holding = new.holding and id = new.id)
begin
    select raise(ignore);
end;
