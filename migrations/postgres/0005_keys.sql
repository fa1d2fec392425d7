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
declare
    rest keys := new;
begin
    rest.ended_at := old.ended_at;
    if old.ended_at is null and new.ended_at is not null and rest *= old then
        return new;
    end if;
    raise exception '%', tg_argv[0];
end
$$;
create trigger keys_are_only_ended before update on keys
for each row execute function keys_are_only_ended('a key is ended, once; nothing else about it changes');
alter table keys enable always trigger keys_are_only_ended;

create trigger keys_are_not_deleted before delete on keys
for each row execute function refuse('a key is ended, never deleted: entries name it');
alter table keys enable always trigger keys_are_not_deleted;
create trigger keys_are_not_truncated before truncate on keys
for each statement execute function refuse('a key is ended, never deleted: entries name it');
alter table keys enable always trigger keys_are_not_truncated;

-- The key that recorded an entry, where a key was asked for.
alter table entries add column key text collate "C" check (length(key) = 8);
