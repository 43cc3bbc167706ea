import { type CanActivate, type ExecutionContext, Injectable } from '@nestjs/common';
import { Reflector } from '@nestjs/core';
import { platformProblems } from '../../problems/platform.problems.js';
import { ALLOW, PUBLIC } from '../allow.js';
import { type Permission, roleIncludes } from '../permission.js';
import { scopeOf } from '../tx.js';

/** Stands before every operation: one that names no permission and no reason to be public is closed. */
@Injectable()
export class PermissionGuard implements CanActivate {
  constructor(private readonly reflector: Reflector) {}

  async canActivate(context: ExecutionContext): Promise<boolean> {
    const places = [context.getHandler(), context.getClass()];
    if (this.reflector.getAllAndOverride<string>(PUBLIC, places)) return true;
    const permission = this.reflector.getAllAndOverride<Permission>(ALLOW, places);
    const scope = scopeOf(context);
    if (!scope.actor) throw platformProblems.signInNeeded({});
    if (!permission || !roleIncludes(scope.actor.role, permission))
      throw platformProblems.notAllowed({ permission: permission ?? 'not named' });
    await scope.open();
    return true;
  }
}
