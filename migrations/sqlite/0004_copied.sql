-- Entries copied from a paper register: what they were copied from, and the day on which they were written there.

alter table entries add column copied_from text check (copied_from <> '');
alter table entries add column written_on text check ((copied_from is null) = (written_on is null));

-- As before, and the two new columns stay as they are too.
drop trigger entries_are_not_updated;

create trigger entries_are_not_updated before update on entries
when not (
    new.body = '' and old.body <> '' and old.kind <> 'archived'
    and new.holding is old.holding and new.seq is old.seq and new.id is old.id
    and new.happened_on is old.happened_on and new.happened_at is old.happened_at
    and new.recorded_at is old.recorded_at and new.recorded_by is old.recorded_by and new.kind is old.kind
    and new.corrects is old.corrects and new.reason is old.reason
    and new.copied_from is old.copied_from and new.written_on is old.written_on
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
