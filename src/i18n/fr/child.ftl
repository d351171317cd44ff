# A child's page, and all visits of a child.


# Who
child-who = { $sex }, { $age }
child-with = avec { $name }
child-known-as = appelé { $name }
child-worker = suivi par { $name }
child-day-estimated = jour de naissance estimé
child-emergency = { $name } : { $why }
child-seen-on = Constaté le { $day }.
child-why-and-what = Pourquoi, et que faire
child-start-visit = Commencer une visite
child-call = Appeler { $name }
child-corrected = { $weeks ->
        [one] Né tôt. Âges corrigés de { $weeks } semaine. Demandez au centre de santé avant de commencer les aliments.
       *[other] Né tôt. Âges corrigés de { $weeks } semaines. Demandez au centre de santé avant de commencer les aliments.
    }
child-born-early = Né tôt. Les âges ne sont plus corrigés.
child-iron-drops = Né petit ou tôt : demandez au centre de santé s’il faut des gouttes de fer.
child-place = Place dans le programme
child-move = Confier à une autre personne ou un autre village
child-leave = L’enfant quitte le programme

# Growth
child-growth = Croissance
child-chart-title = { $name } : { $index }
child-before-due-date = Avant la date prévue de l’accouchement, la croissance ne peut pas être jugée ici : pesée chaque semaine au centre de santé.
child-no-weight = Pas encore de poids.
child-first-weight = Un seul poids pour le moment : { $weight }.
child-gained = { $count ->
        [one] A pris { $weight } en { $count } jour.
       *[other] A pris { $weight } en { $count } jours.
    }
child-lost = { $count ->
        [one] A perdu { $weight } en { $count } jour.
       *[other] A perdu { $weight } en { $count } jours.
    }
child-same-weight = { $count ->
        [one] Le même poids qu’il y a { $count } jour.
       *[other] Le même poids qu’il y a { $count } jours.
    }
child-finding = { $change } { $band }
child-band = Maintenant entre les lignes { $low } et { $high }.
child-band-on = Maintenant sur la ligne { $line }.
child-band-below = Maintenant sous la ligne −3.
child-band-above = Maintenant au-dessus de la ligne +3.
child-length-chart = La taille en courbe
child-numbers = Tous les nombres en tableau
child-numbers-caption = Mesures jusqu’ici ; z selon les normes de l’OMS 2006
child-kg = kg
child-cm = cm
child-arm-mm = Bras, mm
child-waz = Poids pour l’âge, z
child-laz = Taille pour l’âge, z
child-wlz = Poids pour la taille, z
child-remark = Remarque
child-at-birth = à la naissance
child-suspect = peu probable : peser et mesurer de nouveau
child-confirmed = mesuré de nouveau et gardé

# Food
child-stage = Étape d’alimentation : { $stage }
child-usual = Alimentation habituelle : { $texture }.
child-milk-only = Le lait suffit. Ni eau, ni tisane, ni aliment avant 6 mois.
child-texture = À viser : { $texture } ({ $test }).
child-texture-to = { $from }, puis { $to }
child-meals = { $count ->
        [one] { $range } repas par jour.
       *[other] { $range } repas par jour.
    }
child-meals-not-breastfed = { $count ->
        [one] { $range } repas par jour, laits comptés.
       *[other] { $range } repas par jour, laits comptés.
    }
child-snacks = { $count ->
        [one] { $range } collation si l’enfant veut.
       *[other] { $range } collations si l’enfant veut.
    }
child-amount = { $amount } par repas. Suivez la faim de l’enfant.
child-amount-rising = { $from } par repas, puis { $to }. Suivez la faim de l’enfant.
child-cups = { $range } tasse de 250 ml
child-spoons = { $count ->
        [one] { $range } cuillère à soupe
       *[other] { $range } cuillères à soupe
    }
child-next-stage = À partir du { $day } : { $stage }.
child-foods = Aliments
child-not-tried = { $count ->
        [one] { $count } aliment pas encore essayé
       *[other] { $count } aliments pas encore essayés
    }
child-food-trying = À l’essai, pris { $taken } fois sur { $of }
child-food-refused = Refusé, de nouveau dès le { $day }
child-food-offer-again = Refusé, à proposer de nouveau
child-food-rest = Refusé souvent : ce n’est rien, proposez-en d’autres
child-food-hold = En attente depuis le { $since } : { $worst }
child-food-cleared = Permis de nouveau le { $day }
child-hold-mild = réaction légère
child-hold-spreading = réaction étendue
child-hold-severe = réaction grave
child-hold-rule = Rien de ce qui est en attente n’est redonné avant qu’un soignant le dise sans danger.

# Follow-ups
child-follow-ups = À suivre
child-none-open = Rien n’est à suivre. Fiez-vous à ce que vous voyez.
child-rule = Proposé par une règle, ce n’est pas un diagnostic.
child-check-by = À vérifier au plus tard le { $day }.
child-closed = { $count ->
        [one] { $count } terminé
       *[other] { $count } terminés
    }
child-closed-on = terminé le { $day } : { $reason }
child-visit-open = Prochaine visite : maintenant, au plus tard le { $last }.
child-visit-next = Prochaine visite : du { $first } au { $last }.

# Visits
child-visits = Visites
child-no-visits = Pas encore de visite.
child-all-visits = { $count ->
        [one] { $count } visite, avec ce qui a été corrigé
       *[other] Les { $count } visites, avec ce qui a été corrigé
    }
child-visits-of = { $count ->
        [one] { $name } : { $count } visite
       *[other] { $name } : { $count } visites
    }
child-nothing-measured = rien de mesuré
child-arm = bras { $mm }
child-corrected-visit = corrigée
child-voided = annulée : elle n’a pas eu lieu
child-versions = { $count ->
        [one] { $count } version antérieure
       *[other] { $count } versions antérieures
    }
child-version-replaced = Corrigée le { $day } par { $name }, parce que :
child-version-same = Aucune réponse n’a changé.
child-version-from-to = { $before } → { $after }
child-version-confirmed = Mesuré une seconde fois
child-version-unsafe = sous une forme qui peut étouffer
child-version-lifted = de nouveau permis
child-voided-answers = { $count ->
        [one] Sa { $count } réponse
       *[other] Ses { $count } réponses
    }
