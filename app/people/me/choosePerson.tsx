"use client";

import { useRouter } from "next/navigation";
import { useState } from "react";
import { Button } from "@/app/ui/button";
import { Notice } from "@/app/ui/notice";
import { choosePersonAction } from "../actions";

type Person = { readonly id: string; readonly name: string; readonly skills: string };

export function ChoosePerson({ people, me }: { people: readonly Person[]; me: string | null }) {
	const router = useRouter();
	const [problem, setProblem] = useState("");
	return (
		<>
			{problem ? <Notice means="stop">{problem}</Notice> : null}
			<ul className="af-stack" style={{ maxWidth: "30rem", listStyle: "none", padding: 0 }}>
				{people.map((person) => (
					<li key={person.id}>
						<Button
							wide
							kind={person.id === me ? "main" : "plain"}
							aria-pressed={person.id === me}
							onClick={async () => {
								const done = await choosePersonAction(person.id);
								if (done.ok) router.push("/");
								else setProblem(done.error.say);
							}}
						>
							{person.name}
							{person.skills ? `, ${person.skills}` : ""}
						</Button>
					</li>
				))}
			</ul>
		</>
	);
}
