# Les enfants d’un agent, vus par le superviseur
caseload-load = { $children ->
        [one] Un enfant
       *[other] { $children } enfants
    } ; d’ici 7 jours, quelque chose est dû pour { $due }.
caseload-give = Confier des enfants à un collègue
caseload-give-lede = Les enfants cochés changent d’agent aujourd’hui, tous ou aucun ; leurs villages et leurs suivis restent avec eux, et là où ils étaient reste noté.
caseload-no-children = Aucun de ses enfants n’est dans vos zones.
caseload-which = Quels enfants
caseload-to = À qui
caseload-colleague = { $name } : { $children ->
        [one] un enfant
       *[other] { $children } enfants
    }, { $due } dus d’ici 7 jours
caseload-walking = Le programme ne connaît pas les heures de marche : pensez au chemin.
caseload-reason = Pourquoi
caseload-reason-hint = Au moins 10 caractères. C’est noté dans l’histoire de chaque enfant.
caseload-give-do = Confier ces enfants
caseload-given = { $count ->
        [one] Un enfant est maintenant avec { $name }.
       *[other] { $count } enfants sont maintenant avec { $name }.
    }
caseload-changed = Quelqu’un d’autre a changé { $name } entre-temps. Aucun enfant n’a été confié. Regardez encore, puis envoyez.
caseload-due = { $what }, { $date }
caseload-nothing-due = rien de dû
caseload-away-add = Quelqu’un remplace pour quelques jours
