-- Keys: who may read and record where others can reach the service. Only the hash of a key's secret is kept.

create table keys (
    id       text  collate "C" not null primary key check (length(id) = 8),
    holding  text  collate "C" check (holding <> ''),
    role     text  collate "C" not null check (role in ('keeper', 'helper', 'vet', 'reader', 'operator')),
    holder   text  collate "C" not null check (holder <> ''),
    secret   bytea not null unique check (length(secret) = 32),
    made_at  text  collate "C" not null,
    until    text  collate "C" check (until <> ''),
    ended_at text  collate "C" check (ended_at <> ''),
    check ((holding is null) = (role = 'operator'))
);

-- Entries name the key that recorded them, so a key stays. It may be ended, once.
create function keys_are_only_ended() returns trigger language plpgsql set search_path from current as $$
begin
    if old.ended_at is null and new.ended_at is not null
        and new.id is not distinct from old.id and new.holding is not distinct from old.holding
        and new.role is not distinct from old.role and new.holder is not distinct from old.holder
        and new.secret is not distinct from old.secret and new.made_at is not distinct from old.made_at
        and new.until is not distinct from old.until
    then
        return new;
    end if;
    raise exception 'a key is ended, once; nothing else about it changes';
end
$$;
create trigger keys_are_only_ended before update on keys
for each row execute function keys_are_only_ended();
alter table keys enable always trigger keys_are_only_ended;

create function keys_are_not_deleted() returns trigger language plpgsql set search_path from current as $$
begin
    raise exception 'a key is ended, never deleted: entries name it';
end
$$;
create trigger keys_are_not_deleted before delete on keys
for each row execute function keys_are_not_deleted();
alter table keys enable always trigger keys_are_not_deleted;
create trigger keys_are_not_truncated before truncate on keys
for each statement execute function keys_are_not_deleted();
alter table keys enable always trigger keys_are_not_truncated;

-- The key that recorded an entry, where a key was asked for.
alter table entries add column key text collate "C" check (length(key) = 8);

-- As before, and the new column stays as it is too.
create or replace function entries_are_not_updated() returns trigger language plpgsql set search_path from current as $$
begin
    if new.body = '' and old.body <> '' and old.kind <> 'archived'
        and new.holding is not distinct from old.holding and new.seq is not distinct from old.seq
        and new.id is not distinct from old.id
        and new.happened_on is not distinct from old.happened_on
        and new.happened_at is not distinct from old.happened_at
        and new.recorded_at is not distinct from old.recorded_at
        and new.recorded_by is not distinct from old.recorded_by
        and new.kind is not distinct from old.kind
        and new.corrects is not distinct from old.corrects and new.reason is not distinct from old.reason
        and new.copied_from is not distinct from old.copied_from
        and new.written_on is not distinct from old.written_on
        and new.key is not distinct from old.key
        and new.prev is not distinct from old.prev and new.hash is not distinct from old.hash
        and exists (
            select 1 from moved join entries as step
            on step.holding = moved.holding and step.id = moved.archived_by
            where moved.holding = old.holding and moved.seq = old.seq
            and step.kind = 'archived' and step.body <> '' and step.seq > old.seq
        )
    then
        return new;
    end if;
    raise exception 'the journal is append-only: an entry is never changed; correct it with a new entry';
end
$$;
