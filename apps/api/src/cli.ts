import 'reflect-metadata';
import type { Command } from './cli/command.js';
import { inviteOwner } from './cli/invite-owner.command.js';
import { runCommand } from './cli/run-command.js';

const commands: readonly Command[] = [inviteOwner];

process.exitCode = await runCommand(commands, process.argv.slice(2), console.error);
