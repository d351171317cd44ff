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
caseload-colleague-where = { $words }, à { $villages }
caseload-colleague-away = { $words }, pas là jusqu’au { $date }
caseload-way = { $hours ->
        [0] moins d’une demi-heure à pied
        [one] environ une heure à pied
       *[other] environ { $hours } heures à pied
    }
caseload-way-least = { $hours ->
        [0] chemin connu en partie
        [one] au moins une heure à pied, chemin connu en partie
       *[other] au moins { $hours } heures à pied, chemin connu en partie
    }
caseload-way-unknown = chemin inconnu
caseload-way-own = Le chemin pour y aller : { $way }.
caseload-walking = Les heures à pied viennent des minutes que l’administrateur a notées pour chaque zone. Pensez au chemin là où elles ne sont pas connues.
caseload-reason = Pourquoi
caseload-reason-hint = Au moins 10 caractères. C’est noté dans l’histoire de chaque enfant.
caseload-give-do = Confier ces enfants
caseload-given = { $count ->
        [one] Un enfant est maintenant avec { $name }.
       *[other] { $count } enfants sont maintenant avec { $name }.
    }
caseload-changed = Quelqu’un d’autre a changé { $name } entre-temps. Aucun enfant n’a été confié. Regardez encore, puis envoyez.
caseload-due = { $what }, { $date }
caseload-check = { $what }, à revoir d’ici le { $date }
caseload-nothing-due = rien de dû
caseload-away-add = Quelqu’un remplace pour quelques jours
