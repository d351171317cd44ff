# Publications des rapports : quelle révision, ce qui a changé, et pourquoi il n’y en a pas.

period-quarter = Trimestre { $number } de { $year }
period-year = Année { $year }

release-provisional = Provisoire jusqu’au { $date } : des visites qui arrivent tard peuvent encore changer ces chiffres. Ils sont publiés le { $on }.
release-first = Publié le { $date }. Ces chiffres sont fixés ; ce qui arrive plus tard est donné ensemble dans une révision, le { $on } ou plus tard, dès que cela concerne au moins { $least } enfants.
release-revision = Révision { $revision }, publiée le { $date }. Ce qui arrive plus tard est donné ensemble dans la révision suivante, le { $on } ou plus tard, dès que cela concerne au moins { $least } enfants.
release-older = Voici { $name } du { $date }, telle quelle. Une plus récente a été publiée.
release-see-latest = Voir la plus récente
release-name-first = la première publication
release-name-revision = la révision { $revision }
release-changes-see = { $count ->
        [one] Voir le chiffre qu’elle a changé
       *[other] Voir les { $count } chiffres qu’elle a changés
    }
release-changes = Ce que la révision { $revision } a changé
release-changes-count = { $count ->
    [one] Un chiffre montré auparavant est maintenant un autre.
   *[other] { $count } chiffres montrés auparavant sont maintenant d’autres.
} Ce qui était privé le reste.
release-changes-more = { $count ->
    [one] Un de plus n’est pas dans cette liste ; comparez les fichiers.
   *[other] { $count } de plus ne sont pas dans cette liste ; comparez les fichiers.
}
release-figure = Chiffre
release-was = Avant
release-now = Maintenant
release-nothing = rien
release-revisions = Toutes les publications
release-of = { $name }, { $date }
release-faults = Ces chiffres ne sont pas publiés : ils se contredisent
release-faults-what = Personne ne reçoit des chiffres qui se contredisent. Dites à qui s’occupe du programme informatique ce qui est écrit ici ; rien de ce qui a été noté n’est perdu.
release-not-ended = { $period } n’est pas fini. Les rapports se font par mois, trimestres et années entiers ; le dernier mois est { $last }.
release-before-start = { $period } vient avant le programme, dont le premier enfant a été enregistré en { $first }. Choisissez un temps plus récent.
release-nobody = Aucun enfant n’est encore enregistré : il n’y a rien à rapporter.
release-no-revision = { $period } n’a pas de révision { $revision }. Choisissez-en une sous « Toutes les publications ».
release-unknown-period = « { $text } » n’est ni un mois, ni un trimestre, ni une année. Choisissez dans la liste, ou écrivez par exemple 2026-10, 2026-Q3 ou 2026.
release-trouble = Pas de rapport
release-period = Mois, trimestre ou année

# Ce qui ne va pas dans des chiffres
release-fault-part = { $table }, ligne { $row } : { $part } dépasse { $whole }, dont c’est une partie
release-fault-sum = { $table }, ligne { $row } : les lignes de { $split } ne font pas { $column } de leur total
release-fault-row = { $table }, ligne { $row } : les colonnes de la ligne ne s’additionnent pas
release-fault-small = { $table }, ligne { $row } : { $column } est un petit compte qui doit rester privé
release-fault-mixed = { $table } : { $column } n’est pas le même dans toutes les lignes
release-fault-name = { $table }, ligne { $row } : { $column } contient un texte qui n’est pas un code et pourrait être un nom
release-fault-mad = feeding, ligne { $row } : plus d’enfants ont une alimentation acceptable qu’une alimentation variée ou assez de repas
