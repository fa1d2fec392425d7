-- Bodies that were moved into an archive file, and contents of documents that went with them.
--
-- Everything else of an entry stays. The two tables are only ever added to; what stands in them lets one change
-- of a row through, and that once: a body becomes empty, or a content goes.

-- Which entries are without body, and the id of the entry that says so. Where a journal is taken in from an export, that
-- entry comes after those that it names: so the reference is looked at when all of them are in.
create table moved (
    holding     text   collate "C" not null,
    seq         bigint not null check (seq >= 1),
    archived_by uuid   not null,
    primary key (holding, seq),
    foreign key (holding, archived_by) references entries (holding, id) deferrable initially deferred
);

create trigger moved_are_not_updated before update on moved
for each row execute function refuse('what was moved into an archive stays there');
alter table moved enable always trigger moved_are_not_updated;
create trigger moved_are_not_deleted before delete on moved
for each row execute function refuse('what was moved into an archive stays there');
alter table moved enable always trigger moved_are_not_deleted;
create trigger moved_are_not_truncated before truncate on moved
for each statement execute function refuse('what was moved into an archive stays there');
alter table moved enable always trigger moved_are_not_truncated;

create table moved_contents (
    holding     text  collate "C" not null,
    hash        bytea not null check (length(hash) = 32),
    archived_by uuid  not null,
    primary key (holding, hash, archived_by),
    foreign key (holding, archived_by) references entries (holding, id) deferrable initially deferred
);

create trigger moved_contents_are_not_updated before update on moved_contents
for each row execute function refuse('what was moved into an archive stays there');
alter table moved_contents enable always trigger moved_contents_are_not_updated;
create trigger moved_contents_are_not_deleted before delete on moved_contents
for each row execute function refuse('what was moved into an archive stays there');
alter table moved_contents enable always trigger moved_contents_are_not_deleted;
create trigger moved_contents_are_not_truncated before truncate on moved_contents
for each statement execute function refuse('what was moved into an archive stays there');
alter table moved_contents enable always trigger moved_contents_are_not_truncated;

-- Every column but the body stays as it is, to the byte; those that are added later too.
create function entries_are_not_updated() returns trigger language plpgsql set search_path from current as $$
declare
    rest entries := new;
begin
    rest.body := old.body;
    if new.body = '' and old.body <> '' and old.kind <> 'archived' and rest *= old and exists (
        select 1 from moved join entries as step
        on step.holding = moved.holding and step.id = moved.archived_by
        where moved.holding = old.holding and moved.seq = old.seq
        and step.kind = 'archived' and step.body <> '' and step.seq > old.seq
    )
    then
        return new;
    end if;
    raise exception '%', tg_argv[0];
end
$$;
drop trigger entries_are_not_updated on entries;
create trigger entries_are_not_updated before update on entries
for each row execute function entries_are_not_updated(
    'the journal is append-only: an entry is never changed; correct it with a new entry');
alter table entries enable always trigger entries_are_not_updated;

create function entries_come_with_their_body() returns trigger language plpgsql set search_path from current as $$
begin
    if new.body = '' and (
        new.kind = 'archived'
        or not exists (select 1 from moved where holding = new.holding and seq = new.seq)
    ) then
        raise exception 'an entry comes with its body; only one that was moved into an archive is without';
    end if;
    return new;
end
$$;
create trigger entries_come_with_their_body before insert on entries
for each row execute function entries_come_with_their_body();
alter table entries enable always trigger entries_come_with_their_body;

-- A content goes only with the last entry that names it. It stands in the body of that entry as digits in lower case.
create function contents_are_not_deleted() returns trigger language plpgsql set search_path from current as $$
begin
    if exists (
        select 1 from moved_contents join entries as step
        on step.holding = moved_contents.holding and step.id = moved_contents.archived_by
        where moved_contents.holding = old.holding and moved_contents.hash = old.hash
        and step.kind = 'archived' and step.body <> ''
    )
    and not exists (
        select 1 from entries
        where holding = old.holding and kind = 'document_attached'
        and position(encode(old.hash, 'hex') in body) > 0
    )
    then
        return old;
    end if;
    raise exception '%', tg_argv[0];
end
$$;
drop trigger contents_are_not_deleted on contents;
create trigger contents_are_not_deleted before delete on contents
for each row execute function contents_are_not_deleted('a document is never deleted');
alter table contents enable always trigger contents_are_not_deleted;
