-- Everything that keeps the journal as it is, under a name, as text. Argument: the schema; null is the one in use. Its name is taken
-- out of what is said, so that two schemas can be compared.
with here as (
    select oid, quote_ident(nspname) as schema from pg_namespace where nspname = coalesce($1, current_schema())
),
tables as (
    select pg_class.oid, relname, relkind, relpersistence, relrowsecurity, relforcerowsecurity
    from pg_class join here on relnamespace = here.oid
    where relname in ('entries', 'contents', 'moved', 'moved_contents', 'keys')
)
select guard, replace(what, ' ' || schema || '.', ' ') from here, (
    select relname::text, concat_ws(' ', relkind::text, relpersistence::text, relrowsecurity, relforcerowsecurity) from tables
    union all
    select relname || '.' || attname, concat_ws(' ', format_type(atttypid, atttypmod), attnotnull, attgenerated::text, collname,
        pg_get_expr(adbin, adrelid))
    from tables join pg_attribute on attrelid = tables.oid
    left join pg_attrdef on adrelid = tables.oid and adnum = attnum
    left join pg_collation on pg_collation.oid = attcollation
    where attnum > 0 and not attisdropped
    union all
    select relname || ' ' || conname, pg_get_constraintdef(pg_constraint.oid) || ' ' || convalidated
    from tables join pg_constraint on conrelid = tables.oid
    union all
    select tables.relname || ' ' || made.relname,
        regexp_replace(pg_get_indexdef(indexrelid), ' ON .* USING ', ' ON ') || ' ' || indisvalid
    from tables join pg_index on indrelid = tables.oid join pg_class as made on made.oid = indexrelid
    union all
    select tgname::text, pg_get_triggerdef(pg_trigger.oid) || ' ' || tgenabled::text
    from tables join pg_trigger on tgrelid = tables.oid where not tgisinternal
    union all
    select relname || ' rule ' || rulename, ev_type::text || ' ' || is_instead
    from tables join pg_rewrite on ev_class = tables.oid
    union all
    select relname || ' policy ' || polname, polcmd::text from tables join pg_policy on polrelid = tables.oid
    union all
    select relname || ' kept in ' || coalesce(child.inhrelid::regclass::text, ''), 'inherited'
    from tables join pg_inherits as child on child.inhparent = tables.oid
    union all
    select distinct proname || '()', concat_ws(' ', prosrc, lanname, prosecdef,
        replace(array_to_string(proconfig, ' '), 'search_path=' || schema || ',', 'search_path='))
    from tables join pg_trigger on tgrelid = tables.oid join pg_proc on pg_proc.oid = tgfoid
    join pg_language on pg_language.oid = prolang cross join here
    where not tgisinternal
) as made (guard, what)
