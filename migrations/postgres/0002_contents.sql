-- The contents of documents, each once per holding, under the SHA-256 hash of its bytes. Which entry attaches it stands in
-- the journal; here are only the bytes.
create table contents (
    holding text  collate "C" not null,
    hash    bytea not null check (length(hash) = 32),
    bytes   bytea not null check (length(bytes) between 1 and 10000000),
    primary key (holding, hash)
);

create trigger contents_are_not_updated before update on contents
for each row execute function refuse('a document is never changed; attach another with a new entry');
alter table contents enable always trigger contents_are_not_updated;

create trigger contents_are_not_deleted before delete on contents
for each row execute function refuse('a document is never deleted');
alter table contents enable always trigger contents_are_not_deleted;
create trigger contents_are_not_truncated before truncate on contents
for each statement execute function refuse('a document is never deleted');
alter table contents enable always trigger contents_are_not_truncated;

create function contents_keep_their_bytes() returns trigger language plpgsql set search_path from current as $$
begin
    if exists (select 1 from contents where holding = new.holding and hash = new.hash) then
        return null;
    end if;
    return new;
end
$$;
create trigger contents_keep_their_bytes before insert on contents
for each row execute function contents_keep_their_bytes();
alter table contents enable always trigger contents_keep_their_bytes;
