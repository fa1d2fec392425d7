-- Entries copied from a paper register: what they were copied from, and the day on which they were written there.

alter table entries add column copied_from text collate "C" check (copied_from <> '');
alter table entries add column written_on text collate "C";
alter table entries add check ((copied_from is null) = (written_on is null));
