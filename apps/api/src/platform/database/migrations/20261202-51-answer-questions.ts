import type { MigrationInterface, QueryRunner } from 'typeorm';
import { mayPoint } from './organization-table.js';

/** An answer goes to whoever asked, by mail and on the link by which it was asked; what needs no answer is put away. */
export class AnswerQuestions20261202510000 implements MigrationInterface {
  async up(runner: QueryRunner): Promise<void> {
    await runner.query(`alter table client_question
      add column share_link_id uuid,
      add column email text,
      add column language text not null default 'en' constraint client_question_language_known check (language in ('en', 'es')),
      add column dismissed_at timestamptz,
      add column dismissed_by uuid references person (id) on delete set null,
      add column mail_state text constraint client_question_mail_state_known check (mail_state in ('queued', 'sending', 'sent', 'refused', 'unknown')),
      add column mail_answer text,
      add column mail_attempts integer not null default 0,
      add constraint client_question_share_link ${mayPoint('share_link')}`);
    await runner.query(
      'create index client_question_of_link on client_question (organization_id, share_link_id) where share_link_id is not null',
    );
  }

  async down(runner: QueryRunner): Promise<void> {
    await runner.query('drop index client_question_of_link');
    await runner.query(`alter table client_question drop column share_link_id, drop column email, drop column language, drop column dismissed_at,
      drop column dismissed_by, drop column mail_state, drop column mail_answer, drop column mail_attempts`);
  }
}
