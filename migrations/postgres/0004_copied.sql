-- Entries copied from a paper register: what they were copied from, and the day on which they were written there.

alter table entries add column copied_from text collate "C" check (copied_from <> '');
alter table entries add column written_on text collate "C";
alter table entries add check ((copied_from is null) = (written_on is null));

-- As before, and the two new columns stay as they are too.
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
