-- The journals of all holdings: one row per entry, only ever added to. The same tables, checks and triggers as those of the other
-- databases, under the same names; a test compares them.
--
-- Texts are kept exactly as they are hashed, so none is a JSON, date or time type. They sort by their bytes.
--
-- The functions look for their tables where they themselves are, whatever the caller's search path is. Triggers are `always` on:
-- no setting of a session switches them off.
create table entries (
    holding     text   collate "C" not null,
    seq         bigint not null check (seq >= 1),
    id          uuid   not null,
    happened_on text   collate "C" not null,
    happened_at text   collate "C" check (happened_at <> ''),
    recorded_at text   collate "C" not null,
    recorded_by text   collate "C" not null,
    kind        text   collate "C" not null,
    body        text   collate "C" not null,
    corrects    uuid,
    reason      text   collate "C",
    prev        bytea  not null check (length(prev) = 32),
    hash        bytea  not null check (length(hash) = 32),
    primary key (holding, seq),
    unique (holding, id),
    check ((corrects is null) = (reason is null))
);

-- What is refused whoever asks, in the words of the trigger.
create function refuse() returns trigger language plpgsql as $$
begin
    raise exception '%', tg_argv[0];
end
$$;

create trigger entries_are_not_updated before update on entries
for each row execute function
    refuse('the journal is append-only: an entry is never changed; correct it with a new entry');
alter table entries enable always trigger entries_are_not_updated;

create trigger entries_are_not_deleted before delete on entries
for each row execute function
    refuse('the journal is append-only: an entry is never deleted; strike it out with a new entry');
alter table entries enable always trigger entries_are_not_deleted;
-- `truncate` asks no trigger of a row.
create trigger entries_are_not_truncated before truncate on entries
for each statement execute function
    refuse('the journal is append-only: an entry is never deleted; strike it out with a new entry');
alter table entries enable always trigger entries_are_not_truncated;

create function entries_take_the_next_place() returns trigger language plpgsql set search_path from current as $$
begin
    if new.seq <> 1 + coalesce((select max(seq) from entries where holding = new.holding), 0) then
        raise exception 'the journal has no gaps and replaces nothing: an entry takes the next place';
    end if;
    return new;
end
$$;
create trigger entries_take_the_next_place before insert on entries
for each row execute function entries_take_the_next_place();
alter table entries enable always trigger entries_take_the_next_place;

-- Ignored rather than refused, so that it looks like `on conflict (holding, id) do nothing`: no row was added. It comes before
-- the trigger above by its name.
create function entries_keep_their_id() returns trigger language plpgsql set search_path from current as $$
begin
    if exists (select 1 from entries where holding = new.holding and id = new.id) then
        return null;
    end if;
    return new;
end
$$;
create trigger entries_keep_their_id before insert on entries
for each row execute function entries_keep_their_id();
alter table entries enable always trigger entries_keep_their_id;
