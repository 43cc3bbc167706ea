import 'reflect-metadata';
import type { Command } from './cli/command.js';
import { exportFolder } from './cli/export.command.js';
import { importFolder } from './cli/import.command.js';
import { inviteOwner } from './cli/invite-owner.command.js';
import { recompute } from './cli/recompute.command.js';
import { runCommand } from './cli/run-command.js';

const commands: readonly Command[] = [inviteOwner, importFolder, exportFolder, recompute];

process.exitCode = await runCommand(commands, process.argv.slice(2), console.error);
