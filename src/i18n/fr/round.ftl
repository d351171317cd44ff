# The round of a day, the same on paper, and finding a child.


# The heading is the answer
round-title = Tournée
round-title-of = { $day } · { $name }
round-heading = { $left } { $first }
round-left = { $count ->
        [one] { $count } foyer à voir.
       *[other] { $count } foyers à voir.
    }
round-left-over = Plus de { $count } foyers à voir.
round-left-further = { $count ->
        [one] Encore { $count } foyer.
       *[other] Encore { $count } foyers.
    }
round-begin = { $count ->
        [one] { $names } d’abord.
       *[other] { $names } d’abord.
    }
round-begin-more = { $names } et { $count } autres d’abord.
round-none = Aucun foyer à voir aujourd’hui
round-no-more = Plus aucun foyer
round-all-done = Tous les foyers du jour sont vus
round-next = Le prochain est { $name }, à partir du { $day }.
round-find = Chercher un enfant
round-add = Inscrire un enfant
round-anyway = Une famille vous appelle ? Cherchez l’enfant et commencez une visite : aucune échéance n’est nécessaire.
round-rule = Proposé par des règles, ce ne sont pas des diagnostics.
round-more = Voir d’autres foyers
round-print = Imprimer cette tournée
round-later = { $count ->
        [one] Plus tard : { $count } foyer, dans plus d’une semaine
       *[other] Plus tard : { $count } foyers, dans plus d’une semaine
    }

# A home
round-dot = { $left } · { $right }
round-late = { $count ->
        [one] { $count } jour de retard
       *[other] { $count } jours de retard
    }
round-due-today = pour aujourd’hui
round-due-tomorrow = pour demain
round-due-by = pour { $day }
round-until = à faire pour { $day }
round-today = aujourd’hui
round-tomorrow = demain
round-date = le { $day }
round-did-they-reach = Sont-ils arrivés au centre de santé ?
round-and-more = { $count ->
        [one] Et { $count } autre point à suivre.
       *[other] Et { $count } autres points à suivre.
    }
round-visit-too = Visite à faire aussi : { $when }.
round-visit-of = Visite à { $age }.
round-last-seen = Vu la dernière fois le { $day }.
round-never-seen = Pas vu depuis l’inscription.
round-call = Appeler la famille de { $name }

# A home that was seen
round-seen-no-concern = Vu. Rien d’inquiétant dans ce que vous avez vérifié.
round-seen-nothing-checked = Vu. Rien n’a été mesuré ni vérifié.
round-seen-follow-up = Vu. { $why } { $class }, { $due }.
round-seen-not-checked = { $found } Non vérifié : { $list }.
round-check-weight = poids
round-check-length = taille
round-check-arm = bras
round-check-feet = pieds
round-check-signs = signes de danger

# On paper
sheet-title = Feuille de tournée
sheet-label = Feuille de tournée
sheet-how = Pour imprimer : menu du navigateur. A4, à l’horizontale.
sheet-lede = { $count ->
        [one] { $count } foyer.
       *[other] { $count } foyers.
    } Cette feuille nomme des enfants : gardez-la sur vous.
sheet-groups = Groupes : 1 lait maternel, 2 céréales et racines, 3 haricots et noix, 4 lait, yaourt, fromage, 5 poisson et viande, 6 œuf, 7 fruits orange et feuilles vert foncé, 8 autres fruits et légumes.
sheet-home = Foyer
sheet-kg = kg
sheet-cm = cm
sheet-arm = Bras, mm
sheet-feet = Deux pieds enflés
sheet-breast = Lait maternel
sheet-meals = Repas
sheet-food-groups = Groupes d’aliments
sheet-texture = Texture
sheet-new-food = Nouvel aliment : pris, refusé, réaction
sheet-signs = Signes, lettres en bas
sheet-yes-no = O N
sheet-not-done = non fait
sheet-none = aucun
sheet-arm-limit = sous { $mm } ?
sheet-textures = liquide, lisse, écrasé, morceaux, familial
sheet-besides-milk = Autre chose que le lait maternel ?
sheet-refer-now = Référer tout de suite, sans attendre :
sheet-sign-feed = ne peut ni boire ni téter
sheet-sign-vomits = vomit tout
sheet-sign-fits = convulsions
sheet-sign-sleepy = très endormi, difficile à réveiller, inconscient
sheet-sign-breath = respire mal ou vite, creux sous les côtes
sheet-sign-hot-cold = chaud (37,5 °C ou plus) ou froid (moins de 35,5 °C)
sheet-sign-blood = sang dans les selles (référer le jour même)
sheet-arm-key = Bras sous { $mm } mm dès { $months } mois, sous { $young } mm de { $weeks } semaines à { $months } mois, ou deux pieds enflés : référer le jour même.
sheet-urgency-key = Les formes : étoile { $now }, triangle { $today }, losange sous 2 jours, carré sous 7, anneau sous 14, demi-bol à la prochaine visite, maison une visite.

# Finding a child
find-title = Chercher un enfant
find-label = Nom ou code
find-hint = Une partie du nom suffit. Le code est sur la carte : huit signes, avec ou sans trait d’union.
find-left-too = Aussi les enfants partis
find-do = Chercher
find-all = { $count ->
        [one] { $count } enfant suivi par vous
       *[other] { $count } enfants suivis par vous
    }
find-all-over = Vos enfants par nom
find-found = { $count ->
        [one] { $count } enfant pour « { $q } »
       *[other] { $count } enfants pour « { $q } »
    }
find-found-over = Plus de { $count } enfants pour « { $q } »
find-further = Encore des enfants pour « { $q } »
find-none = Aucun enfant pour « { $q } »
find-none-at-all = Pas encore d’enfant
find-none-hint = Essayez une partie plus courte du nom. L’enfant est peut-être suivi par quelqu’un d’autre, ou pas encore inscrit.
find-add = Inscrire un enfant
find-code-slip = Ce code contient une erreur
find-code-slip-hint = Un signe est faux, ou deux sont inversés. Regardez la carte, ou cherchez par nom.
find-code-sign-hint = Un code ne contient jamais 0, O, 1, I ni L. Regardez la carte, ou cherchez par nom.
find-more = Voir d’autres enfants
find-child = { $sex }, { $age }
find-mother = avec { $name }
