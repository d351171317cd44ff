# Rapports mensuels du responsable.

report-title = Mois
report-heading = Rapport, { $month }
report-heading-done = Rapport, { $month } : { $done } visites faites sur { $due }
report-under = { $place } · comptes des enfants visités, pas une enquête
report-sieve = Temps et zone
report-area = Zone
report-all-areas = Tous les villages
report-no-area = { $area } n’est pas dans le rapport de { $period } : rien n’y a été compté, ou seul le programme entier est publié. Choisissez tous les villages ou une autre période.
report-few-areas = Avec moins de trois villages, seul le programme entier est montré : un village se déduirait du total.
report-village = Village
report-all = Tous
report-percent = %
report-interval = Pourrait valoir

# Ce qui est gardé privé
report-private = s
report-few = trop peu
report-could-lie = Pourrait valoir : la vraie part se trouve entre ces deux valeurs, en pour cent, avec 95 chances sur 100. Moins il y a d’enfants, plus l’écart est large.
report-kept = « s » : gardé privé, pour qu’aucun enfant ne soit reconnu. Le chiffre est inférieur à { $threshold }, ou un chiffre aussi petit pourrait s’en déduire ; il n’est pas dit lequel des deux. « trop peu » : pas de pourcentage de si peu d’enfants. Les totaux comptent tout le monde.

# Visites
report-visits = Visites attendues et faites
report-due = Attendues
report-done = Faites
report-on-time = À temps
report-skipped = Sautées
report-not-done = Non faites
report-coverage = % fait

# Croissance
report-low-weight = Poids bas pour l’âge (sous −2)
report-column = { $who } : { $what }
report-girls = Filles
report-boys = Garçons
report-both = Tous
report-low = bas
report-weighed = pesés
report-growth = Croissance des enfants vus
report-children-with = Enfants avec
report-children = Enfants
report-of = Sur
report-waz-low = Poids bas pour l’âge (sous −2)
report-waz-very-low = Poids très bas pour l’âge (sous −3)
report-wlz-low = Maigre pour sa taille (sous −2)
report-wlz-very-low = Très maigre pour sa taille (sous −3)
report-laz-low = Petit pour son âge (sous −2)
report-wlz-high = Lourd pour sa taille (au-dessus de +2)
report-muac-low = Bras sous 115 mm, dès 6 mois
report-muac-middle = Bras de 115 à 124 mm, dès 6 mois
report-oedema = Gonflement des deux pieds
report-sam = Un signe d’émaciation sévère, parmi les enfants vus dès 6 mois
report-mam = Un signe d’émaciation modérée, parmi les enfants vus dès 6 mois
report-u6 = Un signe de risque, parmi les enfants vus avant 6 mois
report-slow = Prise de poids lente, nulle, ou perte

# Effectifs
report-enrolment = Enfants dans le programme
report-start = Au début
report-joined = Entrés
report-left = Partis
report-moved-in = Venus d’un autre village
report-moved-out = Partis vers un autre village
report-end = À la fin
report-reasons = Pourquoi des enfants sont partis, et réactions sévères
report-reason = Raison
report-reason-transferred-out = Vers un autre programme
report-reason-moved = A déménagé
report-reason-refused = La famille ne veut pas de visites
report-reason-withdrawn = Consentement retiré
report-reason-aged-out = A atteint 24 mois
report-reason-died = Décédé
report-reason-severe-reactions = Réactions alimentaires sévères (ouvertes dans ce temps)

# Alimentation
report-feeding = Alimentation, la veille de la visite
report-children-who = Enfants qui ont eu
report-months = Mois
report-yes = Oui
report-missing = Sans réponse
report-ind-evbf = Du lait maternel un jour (enregistrés dans ce temps)
report-ind-eibf = Le sein dans l’heure de la naissance (enregistrés dans ce temps)
report-ind-ebf = Seulement du lait maternel
report-ind-cbf = Encore du lait maternel
report-ind-isssf = Un aliment solide
report-ind-mdd = Cinq groupes d’aliments ou plus
report-ind-mmf = Assez de repas
report-ind-mmff = Assez de lait, non allaités
report-ind-mad = Assez de groupes, de repas et de lait
report-ind-eff = Œuf, poisson ou viande
report-ind-zvf = Ni fruit ni légume
report-ind-swb = Une boisson sucrée
report-ind-ufc = Un aliment de faible valeur
report-ind-bof = Un biberon avec tétine
report-ind-texture-on-stage = Une texture de leur étape
report-ind-lumps-by-9m = Des morceaux mous, à 9 mois
report-ind-lumps-by-10m = Des morceaux mous, à 10 mois

# Suivis
report-follow-ups = Suivis ouverts
report-about = Sujet
report-rule-class = { $rule } ({ $class })
report-opened = Ouverts
report-met-on-time = Revus à temps
report-met-late = Revus en retard
report-open-late = Ouverts et en retard
report-median = Jours jusqu’à la revue (milieu)
report-stock = Suivis ouverts à la fin, par jours de retard
report-stock-open = Ouverts
report-stock-late-0 = Sans retard
report-stock-late-1-7 = 1–7
report-stock-late-8-14 = 8–14
report-stock-late-15-30 = 15–30
report-stock-late-over-30 = Plus de 30
report-referrals = Références du jour même
report-referral-made = Faites
report-referral-reached-same-day = Soin atteint le jour même
report-referral-outcome-known-7d = Suite connue en 7 jours

# Réactions
report-reactions = Réactions aux aliments
report-reaction-after = Après
report-reaction-kind = { $food } : { $level }
report-reaction-of = { $group } ({ $allergen })
report-reaction-no-group = Autre aliment
report-reaction-all = Toutes sauf les graves
report-reaction-severe = Graves, après tout aliment
report-reaction-told = Racontées
report-reaction-referred = À référer le jour même
report-reaction-known = Issue connue

# Fichiers
report-files = { $month } en fichiers CSV
report-files-what = Chaque fichier est un tableau avec toutes les zones. Les chiffres privés sont vides ; la dernière colonne dit lesquels. Les téléchargements sont notés.
report-file-enrolment = qui est dans le programme, par zone, sexe et âge
report-file-programme = raisons des départs, décès et réactions sévères, programme entier
report-file-visits = visites attendues et faites, par zone et étape du calendrier
report-file-growth = poids, taille et bras, par zone, sexe et âge
report-file-feeding = indicateurs d’alimentation, par zone, sexe et âge
report-file-followups = suivis ouverts, par zone et règle
report-file-followups-stock = suivis ouverts à la fin, par zone et degré
report-file-referrals = références du jour même, par zone
report-file-reactions = réactions aux aliments, par zone, groupe d’aliments, allergène et gravité

# Mises en garde
report-cautions = Avant d’utiliser ces chiffres
report-caution-survey = Comptes des enfants visités. Pas une enquête ; ne comparez pas des zones dont la couverture diffère.
report-caution-rounded = Arrondis, et petits comptes gardés privés.
report-caution-late = Des visites tardives peuvent changer des chiffres provisoires ; après la publication, elles donnent une révision, jamais en silence.
report-caution-age = L’âge est celui de la date de visite ; la croissance des bébés nés tôt utilise l’âge corrigé.
report-caution-missing = Un chiffre bas peut venir de questions sans réponse : voyez « Sans réponse », la colonne missing_n dans les fichiers.
report-caution-definitions = Chaque enfant compte une fois, par la dernière visite du mois, du trimestre ou de l’année. Une réponse qui y manque vient de la plus récente qui l’a.
