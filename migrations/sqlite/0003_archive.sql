-- Bodies that were moved into an archive file, and contents of documents that went with them.
--
-- Everything else of an entry stays. The two tables are only ever added to; what stands in them lets one change
-- of a row through, and that once: a body becomes empty, or a content goes.

-- Which entries are without body, and the id of the entry that says so. Where a journal is taken in from an export, that
-- entry comes after those that it names: so the reference is looked at when all of them are in.
create table moved (
    holding     text    not null,
    seq         integer not null check (seq >= 1),
    archived_by blob    not null check (length(archived_by) = 16),
    primary key (holding, seq),
    foreign key (holding, archived_by) references entries (holding, id) deferrable initially deferred
) strict, without rowid;

create trigger moved_are_not_updated before update on moved
begin
    select raise(abort, 'what was moved into an archive stays there');
end;

create trigger moved_are_not_deleted before delete on moved
begin
    select raise(abort, 'what was moved into an archive stays there');
end;

-- `insert or replace` deletes without asking the trigger above.
create trigger moved_are_not_replaced before insert on moved
when exists (select 1 from moved where holding = new.holding and seq = new.seq)
begin
    select raise(abort, 'what was moved into an archive stays there');
end;

create table moved_contents (
    holding     text not null,
    hash        blob not null check (length(hash) = 32),
    archived_by blob not null check (length(archived_by) = 16),
    primary key (holding, hash, archived_by),
    foreign key (holding, archived_by) references entries (holding, id) deferrable initially deferred
) strict, without rowid;

create trigger moved_contents_are_not_updated before update on moved_contents
begin
    select raise(abort, 'what was moved into an archive stays there');
end;

create trigger moved_contents_are_not_deleted before delete on moved_contents
begin
    select raise(abort, 'what was moved into an archive stays there');
end;

create trigger moved_contents_are_not_replaced before insert on moved_contents
when exists (
    select 1 from moved_contents
    where holding = new.holding and hash = new.hash and archived_by = new.archived_by
)
begin
    select raise(abort, 'what was moved into an archive stays there');
end;

drop trigger entries_are_not_updated;

create trigger entries_are_not_updated before update on entries
when not (
    new.body = '' and old.body <> '' and old.kind <> 'archived'
    and new.holding is old.holding and new.seq is old.seq and new.id is old.id
    and new.happened_on is old.happened_on and new.happened_at is old.happened_at
    and new.recorded_at is old.recorded_at and new.recorded_by is old.recorded_by and new.kind is old.kind
    and new.corrects is old.corrects and new.reason is old.reason
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

create trigger entries_come_with_their_body before insert on entries
when new.body = '' and (
    new.kind = 'archived'
    or not exists (select 1 from moved where holding = new.holding and seq = new.seq)
)
begin
    select raise(abort, 'an entry comes with its body; only one that was moved into an archive is without');
end;

drop trigger contents_are_not_deleted;

-- A content goes only with the last entry that names it. It stands in the body of that entry as digits in lower case.
create trigger contents_are_not_deleted before delete on contents
when not exists (
    select 1 from moved_contents join entries as step
    on step.holding = moved_contents.holding and step.id = moved_contents.archived_by
    where moved_contents.holding = old.holding and moved_contents.hash = old.hash
    and step.kind = 'archived' and step.body <> ''
)
or exists (
    select 1 from entries
    where holding = old.holding and kind = 'document_attached' and instr(body, lower(hex(old.hash))) > 0
)
begin
    select raise(abort, 'a document is never deleted');
end;
