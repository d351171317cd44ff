# La page d'une visite.

visit-title = Visite : { $name }
visit-title-correct = Corriger une visite : { $name }
visit-heading = Visite :
visit-heading-correct = Corriger une visite :
visit-lede = { $who }. Demandez d’abord : { $sex ->
        [F] « Puis-je la peser et parler de ses repas ? »
       *[M] « Puis-je le peser et parler de ses repas ? »
    }
visit-correct-lede = La visite du { $date }. Ce qui était enregistré est gardé, et les règles sont relues à partir de ce jour.
visit-back = la page de l’enfant
visit-emergency = Respire mal, bleu ou s’étouffe maintenant : ouvrez ceci tout de suite
visit-to-signs = Ne peut pas boire, convulse, difficile à réveiller ? Cochez d’abord les signes
visit-danger-saved = Ce que vous avez coché est enregistré. Agissez maintenant ; corrigez le reste plus bas quand vous aurez le temps.
visit-unusual-heading = Pas encore enregistré : une valeur est inhabituelle
visit-unusual-text = Elle peut être juste. Mesurez de nouveau, puis écrivez ce que vous trouvez. Enregistrer encore une fois tel quel l’enregistre.
visit-unusual-link = Y aller
visit-reason = Pourquoi cette correction ?
visit-reason-hint = Par exemple : deux chiffres étaient inversés.
visit-reason-unfinished = Le reste du formulaire, écrit après l’enregistrement du danger.
visit-save = Enregistrer et voir quoi faire
visit-save-correct = Enregistrer la correction

# When and where
visit-when-where = { $day }, { $place }
visit-at-home = à la maison
visit-at-clinic = au centre de santé
visit-by-phone = par téléphone
visit-day = Jour de la visite
visit-on = Quel jour
visit-contact = Lieu

# What was open
visit-open = Depuis la dernière fois
visit-open-since = ouvert depuis le { $date }
visit-open-more = { $count ->
        [one] { $count } autre suivi est ouvert
       *[other] { $count } autres suivis sont ouverts
    }
visit-outcome = Qu’est-ce que cela a donné ?
visit-referred = Référé à cette visite
visit-referrals = Envoyé au centre de santé à cette visite pour

# Weigh and measure
visit-measure = Peser et mesurer
visit-weight = Poids
visit-length = Longueur, couché
visit-length-standing = Taille, debout
visit-length-hint = Laissez vide si ce n’est pas mesuré.
visit-arm = Tour de bras
visit-arm-hint = En mm ; les cm sont compris aussi.
visit-head = Tour de tête, au plus large
visit-position = Comment la longueur a-t-elle été prise ?
visit-as-usual = Comme d’habitude à cet âge
visit-feet = Les deux pieds gonflés ?
visit-feet-hint = Appuyez 3 secondes avec le pouce. Le creux reste-t-il ?
visit-measure-more = Tête, ou longueur prise autrement
visit-kg = kg
visit-cm = cm
visit-mm = mm
visit-days = jours
visit-times = fois
visit-min = minutes
visit-both-units = { $mm } ({ $cm })
visit-odd-heading = { $value } : regardez de nouveau
visit-odd-before = La dernière fois : { $value } le { $date }.
visit-odd-outside = C’est loin de ce que mesurent les enfants de cet âge, de ce sexe et de cette longueur.
visit-odd-jump = C’est un grand changement pour ce temps.
visit-odd-less = C’est moins que la dernière fois.
visit-odd-changed = Un bras change lentement.
visit-odd-weigh = Pesez de nouveau, puis écrivez. Regardez les chiffres, l’unité, la balance, et si c’est le même enfant.
visit-odd-measure = Mesurez de nouveau, puis écrivez. Regardez les chiffres, l’unité, et si c’est le même enfant.
visit-odd-tick-weight = J’ai pesé de nouveau : c’est { $value }
visit-odd-tick = J’ai mesuré de nouveau : c’est { $value }

# Yesterday
visit-yesterday = Hier, jour et nuit
visit-breastfed = Allaité ?
visit-besides = Autre chose que le lait maternel ?
visit-besides-hint = Eau, lait infantile, lait animal, thé, bouillie. Médicaments, gouttes et sels de réhydratation ne comptent pas.
visit-breast-only = Rien que le lait maternel ?
visit-other-milk = Un autre lait, ou du yaourt à boire ?
visit-other-milk-hint = Lait infantile, lait animal, yaourt.
visit-milk-prepared = Regardez la préparation : eau propre bouillie, mesure entière de poudre, jamais dilué, tasse ouverte.
visit-formula-times = Lait infantile
visit-animal-milk-times = Lait animal à boire
visit-drink-yogurt-times = Yaourt à boire
visit-spoon-yogurt-times = Yaourt à la cuillère
visit-other-drink = Eau, jus, thé ou autre boisson ?
visit-sweet-drink = Une boisson sucrée ?
visit-solids-yesterday = De la bouillie ou un aliment ?
visit-started = Depuis quand des aliments ?
visit-started-hint = Laissez vide si ce n’est pas commencé ou si le jour n’est pas connu.
visit-started-known = Déjà dit : { $date }. N’écrivez que ce qui est nouveau.
visit-groups = Qu’a mangé ou bu l’enfant ?
visit-groups-hint = Cochez tout. Goûter compte ; une pincée pour le goût ne compte pas.
visit-recipes-held = Contient un aliment en attente : { $foods }
visit-recipes-rest = Autre chose hier ?
visit-recipes-rest-text = Pas encore enregistré. Ce que la recette contient est coché. Cochez tout ce que l’enfant a mangé ou bu d’autre, puis enregistrez.
visit-groups-none = Si rien n’est coché
visit-recipes = Quelles recettes du programme ?
visit-recipes-hint = Ce qu’elles contiennent est coché pour vous à l’enregistrement : groupes d’aliments, aliments, fer ajouté. Si vous retirez une recette plus tard, revoyez aussi ces coches.
visit-recipes-named = Était-ce fait selon une recette ?
visit-group-grains-roots = mil, manioc
visit-group-pulses-nuts = haricots, pâte d’arachide
visit-group-flesh = petit poisson séché
visit-group-vit-a = courge, mangue, feuilles
visit-group-other-fv = banane, tomate
visit-meals = Repas et goûters
visit-meals-hint = Fois avec un aliment solide ou mou. Une bouchée ne compte pas.
visit-texture = D’habitude, l’aliment était…
visit-texture-last = La dernière fois : { $texture }
visit-texture-best = A-t-il déjà mangé plus épais ou en morceaux, sans peine ?
visit-also = Quelque chose de ceci ?
visit-also-hint = Cochez oui. Demandez avec les mots de la famille.
visit-also-all = Et ce qui n’est pas coché ?
visit-also-asked = Demandé : non
visit-also-not-asked = Pas tout demandé
visit-also-iron-source = Fer, gouttes ou poudre
visit-also-sweet-drink = Boisson sucrée
visit-also-unhealthy-food = Bonbons ou chips
visit-also-bottle = Biberon
visit-also-tea-coffee = Thé ou café
visit-also-salt = Sel ajouté
visit-also-sugar = Sucre ajouté
visit-also-honey = Miel, depuis la dernière fois
visit-also-breastfeeding-trouble = Allaitement difficile
visit-also-ill = Malade en ce moment
visit-drinks-more = Plus sur les boissons et les aliments
visit-low-value = Thé, café, sel ou sucre ?
visit-low-value-none = Si rien n’est coché
visit-readiness = Prêt pour les aliments ?
visit-readiness-none = Si rien n’est coché

# New foods
visit-new-since = Nouveau depuis le { $date }
visit-new-first = Nouveaux aliments
visit-new-food = Un nouvel aliment ?
visit-no-new-food = Rien de nouveau
visit-new-hint = Un seul nouvel aliment à la fois, 2 à 3 jours chacun.
visit-food-on-hold = { $food } : en attente. Redonné ?
visit-lifted = Qui peut le permettre de nouveau : un soignant ou votre superviseur, par son nom
visit-lifted-yes = C’est de nouveau permis ; le nom est dans la note plus bas
visit-other-food = Un autre aliment
visit-other-more = Encore un aliment
visit-taken = Comment l’a-t-il pris ?
visit-not-given = Pas donné
visit-given = Donné, pas demandé comment
visit-reaction-signs = Que s’est-il passé ?
visit-reaction-none = Si rien n’est coché
visit-reaction-emergency = Cela arrive maintenant ? Ouvrez la page d’urgence
visit-minutes = Premier signe après le repas
visit-unsafe = Donné sous une forme qui peut étouffer ?
visit-unsafe-hint = Noix entières, morceaux durs et crus, os ou arêtes, petits fruits ronds entiers.
visit-offers = Fois proposé
visit-food-more = Combien de fois, sous quelle forme

# Signs
visit-signs = Signes aujourd’hui
visit-danger = Cochez ce que vous voyez ou entendez
visit-danger-hint = Dans le doute, considérez que c’est grave. Respiration rapide à cet âge : { $breaths } par minute ou plus, comptée deux fois.
visit-danger-none = Si rien n’est coché
visit-swallow = Pendant le repas
visit-appetite = Jours où il refuse presque tout
visit-appetite-hint = 0 s’il mange comme d’habitude.
visit-plans = Un centre de santé a-t-il fait un plan pour ceci ?
visit-plans-hint = Cochez ce que le plan couvre.
visit-plans-none = Si rien n’est coché
visit-no-plan = Demandé : pas de plan
visit-plan-solids-early = Aliments avant 6 mois
visit-plan-milk-animal-early = Lait animal avant 6 mois
visit-plan-birth-low = Né petit ou trop tôt
visit-plan-breastfeeding-stopped = Pas allaité
visit-more = Autres questions
visit-note = Autre chose ?
visit-note-hint = Pour vous et votre superviseur. Ce n’est pas obligatoire.
visit-answer = Une réponse

# Quand quelqu’un d’autre a été plus rapide
visit-changed = Vos réponses ne sont pas encore enregistrées : { $name } a modifié cette visite après que vous l’avez ouverte. Sa raison : { $reason }
visit-changed-beside = Rien de ce que vous avez écrit n’est perdu. Là où la visite dit maintenant autre chose, c’est indiqué près de votre réponse. Ce que vous enregistrez le remplace : regardez chaque point, puis enregistrez à nouveau.
visit-changed-danger = Les signes de danger cochés sont enregistrés. Le reste n’est pas encore enregistré : { $name } a modifié cette visite après que vous l’avez ouverte. Sa raison : { $reason }
visit-changed-standing = Quelqu’un d’autre a noté ce danger. Il est coché ci-dessous et reste, sauf si vous l’enlevez. Ne l’enlevez que si c’était faux.
visit-changed-reaction = { $food } : réaction
visit-changed-list = { $count ->
        [one] Une réponse diffère :
       *[other] { $count } réponses diffèrent :
    }
visit-gone = Non enregistré : quelqu’un a retiré cette visite ou l’a attribuée à un autre enfant après que vous l’avez ouverte. Rien de ce que vous avez écrit n’est perdu. Si c’était pourtant une visite à cet enfant, enregistrez-la comme nouvelle visite ; sinon, quittez cette page.
stands-now = Il est écrit maintenant :
stands-nothing = pas de réponse
