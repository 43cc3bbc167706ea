import type { MigrationInterface, QueryRunner } from 'typeorm';
import { APP_ROLE, OWNER_ROLE } from '../database-url.js';

/** Questions and deeds that reach over organizations: each is one narrow function of the tables' owner, for the application to call. */
const FUNCTIONS = ['server_is_empty()', 'demo_was_cleared()', 'demo_doors()', 'clear_demo()'];

/** Whether the server is empty, the doors of the demonstration, and its clearing. */
export class AddIdentityFunctions20261124110000 implements MigrationInterface {
  async up(runner: QueryRunner): Promise<void> {
    // Forced policies hold for the owner too. The application is no member of the owner, so this opens nothing to it.
    await runner.query(`create policy seen_by_functions on organization for select to ${OWNER_ROLE} using (true)`);
    // So that a start after the demonstration was cleared does not bring it back.
    await runner.query('create table demo_cleared (at timestamptz not null default now())');
    await this.serverIsEmpty(runner);
    await this.demoDoors(runner);
    await this.clearDemo(runner);
    for (const name of FUNCTIONS) {
      await runner.query(`revoke all on function ${name} from public`);
      await runner.query(`grant execute on function ${name} to ${APP_ROLE}`);
    }
  }

  private async serverIsEmpty(runner: QueryRunner): Promise<void> {
    await runner.query(`create function server_is_empty() returns boolean language sql stable security definer set search_path = pg_catalog as $$
      select not exists (select from public.organization) $$`);
    await runner.query(`create function demo_was_cleared() returns boolean language sql stable security definer set search_path = pg_catalog as $$
      select exists (select from public.demo_cleared) $$`);
  }

  private async demoDoors(runner: QueryRunner): Promise<void> {
    await runner.query(`create function demo_doors() returns table (email text, name text, role text, organization_name text) language plpgsql security definer set search_path = pg_catalog as $$
      declare before text := coalesce(current_setting('app.organization_id', true), ''); demo record;
      begin
        for demo in select id, organization.name as called from public.organization where is_demo order by organization.name loop
          perform set_config('app.organization_id', demo.id::text, true);
          return query select person.email, person.name, member.role, demo.called from public.member join public.person on person.id = member.person_id
            where member.organization_id = demo.id and member.retired_at is null
            order by array_position(array['owner', 'office', 'crewLead', 'technician', 'client'], member.role), person.name;
        end loop;
        perform set_config('app.organization_id', before, true);
      end $$`);
  }

  /** Only from within a demonstration. Properties go first: a client is kept as long as it has one. */
  private async clearDemo(runner: QueryRunner): Promise<void> {
    await runner.query(`create function clear_demo() returns integer language plpgsql security definer set search_path = pg_catalog as $$
      declare mine uuid := nullif(current_setting('app.organization_id', true), '')::uuid; demo uuid; someone uuid; met uuid[] := '{}'; cleared integer := 0;
      begin
        if not exists (select from public.organization where id = mine and is_demo) then raise exception 'clear_demo needs a demonstration' using errcode = '42501'; end if;
        for demo in select id from public.organization where is_demo loop
          perform set_config('app.organization_id', demo::text, true);
          met := met || array(select person_id from public.member where organization_id = demo);
          delete from public.property where organization_id = demo;
          delete from public.organization where id = demo;
          cleared := cleared + 1;
        end loop;
        perform set_config('app.organization_id', '', true);
        foreach someone in array met loop
          perform set_config('app.person_id', someone::text, true);
          delete from public.person where id = someone and not exists (select from public.member where person_id = someone);
        end loop;
        perform set_config('app.person_id', '', true);
        insert into public.demo_cleared default values;
        return cleared;
      end $$`);
  }

  async down(runner: QueryRunner): Promise<void> {
    for (const name of FUNCTIONS) await runner.query(`drop function ${name}`);
    await runner.query('drop table demo_cleared');
    await runner.query('drop policy seen_by_functions on organization');
  }
}
