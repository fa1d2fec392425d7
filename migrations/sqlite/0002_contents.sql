-- The contents of documents, each once per holding, under the SHA-256 hash of its bytes. Which entry attaches it stands in
-- the journal; here are only the bytes.
--
-- Without a rowid, although rows are large: with one, `insert or replace` under the rowid of another row would take that
-- row away and ask no trigger.
create table contents (
    holding text not null,
    hash    blob not null check (length(hash) = 32),
    bytes   blob not null check (length(bytes) between 1 and 10000000),
    primary key (holding, hash)
) strict, without rowid;

create trigger contents_are_not_updated before update on contents
begin
    select raise(abort, 'a document is never changed; attach another with a new entry');
end;

create trigger contents_are_not_deleted before delete on contents
begin
    select raise(abort, 'a document is never deleted');
end;

-- `insert or replace` deletes without asking the trigger above. This leaves it nothing to replace.
create trigger contents_keep_their_bytes before insert on contents
when exists (select 1 from contents where holding = new.holding and hash = new.hash)
begin
    select raise(ignore);
end;
