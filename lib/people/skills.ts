// What people can do, as their skills are said: "lead, mechanic". Pure.

/** The single skills, in small letters. */
export const skillsIn = (said: string): string[] =>
	said
		.split(/[,;]/)
		.map((skill) => skill.trim().toLowerCase())
		.filter(Boolean);

/** Whether somebody with these skills can do what is wanted; wanting nothing, everybody can. */
export const canDo = (said: string, wanted: string | null): boolean =>
	wanted === null || wanted.trim() === "" || skillsIn(said).includes(wanted.trim().toLowerCase());
