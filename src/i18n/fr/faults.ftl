# What may be wrong with something typed. Said beside the field and in the summary: what to do, not whose mistake it is.

fault-missing = Écrivez ou choisissez une réponse.
fault-not-a-number = Écrivez un nombre, par exemple 7,4 ou 2.
fault-too-many-decimals = { $most ->
        [0] Écrivez un nombre entier, sans virgule.
        [one] Écrivez au plus { $most } chiffre après la virgule.
       *[other] Écrivez au plus { $most } chiffres après la virgule.
    }
fault-outside = La valeur doit être entre { $least } et { $most } { $unit }. Regardez l’unité et les chiffres.
fault-outside-count = La valeur doit être entre { $least } et { $most }. Regardez les chiffres.
fault-not-a-date = Ce jour n’existe pas. Écrivez jour, mois et année, par exemple 5 11 2026.
fault-in-future = Ce jour n’est pas encore venu.
fault-before-birth = Ce jour est avant la naissance. Regardez les deux dates.
fault-after-visit = Ce jour est après la visite. Regardez les deux dates.
fault-too-old = Plus de { $months } mois : le programme inscrit des enfants plus jeunes. Regardez la date de naissance.
fault-unknown-choice = Choisissez une des réponses proposées.
fault-unknown-food = « { $typed } » n’est pas un aliment de ce programme. Choisissez-en un dans la liste ; sa dernière ligne est pour tout autre aliment.
fault-unknown-food-like = « { $typed } » n’est pas un aliment de ce programme. Si vous voulez dire « { $like } », choisissez-le dans la liste.
fault-too-long = Trop long : écrivez au plus { $most } caractères.
fault-too-short = Trop court : écrivez au moins { $least } caractères.
fault-no-consent = Sans l’accord de la famille, l’enfant ne peut pas être inscrit. Demandez, puis cochez.
fault-not-the-same = Les deux ne sont pas pareils. Écrivez deux fois le nouveau mot de passe.
fault-wrong-sign-in = Le nom ou le mot de passe ne va pas. Regardez les deux et réessayez.
fault-wrong-password = Le mot de passe actuel ne va pas.
fault-easy-password = Trop facile à deviner. Prenez plusieurs mots que vous seul mettriez ensemble.
fault-taken = Quelqu’un l’a déjà. Choisissez autre chose.
fault-unknown-code = Ce code n’existe pas dans ce programme. Regardez les lettres et les chiffres.
fault-needs-outcome = Écrivez d’abord la suite donnée au centre de santé : un suivi urgent ne se ferme pas sans résultat.
fault-plain-letters = N’utilisez que des petites lettres de a à z et des chiffres, avec un trait d’union ou un point entre eux si vous voulez.
fault-before-start = Ce jour est avant le premier jour. Regardez les deux dates.
fault-over = Ce jour est déjà passé. Prenez aujourd’hui ou un jour à venir.
fault-last-administrator = Plus personne ne pourrait gérer les personnes. Nommez d’abord un autre administrateur.
fault-unknown-time-zone = Aucun fuseau horaire ne porte ce nom. Choisissez-en un de la liste, de la forme Continent/Ville, ou UTC.
fault-no-change = C’est déjà ainsi. Choisissez autre chose, ou revenez en arrière.
fault-no-child = Cochez au moins un enfant.
fault-already-left = Le départ de cet enfant est déjà noté. Ouvrez sa page pour le voir.
fault-supervisor-only = Dites-le à votre superviseur, qui le note avec la famille.
fault-has-left = Le dernier jour de { $name } était le { $last }. Choisissez un collègue qui travaille encore dans le programme.
fault-leaves-before = Le dernier jour de { $name } est le { $last }, avant la fin de ces jours. Choisissez un collègue présent tous ces jours, ou arrêtez ce jour-là et trouvez quelqu’un pour le reste.
fault-is-away = { $name } n’est pas là du { $from } au { $to }. Choisissez un collègue présent tous ces jours, ou d’autres jours.
fault-stood-in = { $name } remplace déjà du { $from } au { $to }. Choisissez des jours en dehors, ou arrêtez d’abord ce remplacement.
