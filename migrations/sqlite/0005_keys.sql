-- Keys: who may read and record where others can reach the service. Only the hash of a key's secret is kept.

create table keys (
    id       text not null primary key check (length(id) = 8),
    holding  text check (holding <> ''),
    role     text not null check (role in ('keeper', 'helper', 'vet', 'reader', 'operator')),
    holder   text not null check (holder <> ''),
    secret   blob not null unique check (length(secret) = 32),
    made_at  text not null,
    until    text check (until <> ''),
    ended_at text check (ended_at <> ''),
    check ((holding is null) = (role = 'operator'))
) strict, without rowid;

-- Entries name the key that recorded them, so a key stays. It may be ended, once.
create trigger keys_are_only_ended before update on keys
when not (
    old.ended_at is null and new.ended_at is not null
    and new.id is old.id and new.holding is old.holding and new.role is old.role and new.holder is old.holder
    and new.secret is old.secret and new.made_at is old.made_at and new.until is old.until
)
begin
    select raise(abort, 'a key is ended, once; nothing else about it changes');
end;

create trigger keys_are_not_deleted before delete on keys
begin
    select raise(abort, 'a key is ended, never deleted: entries name it');
end;

-- `insert or replace` deletes without asking the trigger above.
create trigger keys_are_not_replaced before insert on keys
when exists (select 1 from keys where id = new.id or secret = new.secret)
begin
    select raise(abort, 'a key is never replaced');
end;

-- The key that recorded an entry, where a key was asked for.
alter table entries add column key text check (length(key) = 8);

-- As before, and the new column stays as it is too.
drop trigger entries_are_not_updated;

create trigger entries_are_not_updated before update on entries
when not (
    new.body = '' and old.body <> '' and old.kind <> 'archived'
    and new.holding is old.holding and new.seq is old.seq and new.id is old.id
    and new.happened_on is old.happened_on and new.happened_at is old.happened_at
    and new.recorded_at is old.recorded_at and new.recorded_by is old.recorded_by and new.kind is old.kind
    and new.corrects is old.corrects and new.reason is old.reason
    and new.copied_from is old.copied_from and new.written_on is old.written_on and new.key is old.key
    and new.prev is old.prev and new.hash is old.hash
    and exists (
        select 1 from moved join entries as step
        on step.holding = moved.holding and step.id = moved.archived_by
        where moved.holding = old.holding and moved.seq = old.seq
        and step.kind = 'archived' and step.body <> '' and step.seq > old.seq
    )
)
begin
    select raise(abort, 'the journal is append-only: an entry is never changed; correct it with a new entry');
end;
