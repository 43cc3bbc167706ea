/** Skills as they are compared: without spaces around, in small letters, each once, none empty. */
export const cleanSkills = (skills: readonly string[]): string[] =>
  [...new Set(skills.map((skill) => skill.trim().toLowerCase()).filter((skill) => skill !== ''))].sort();
