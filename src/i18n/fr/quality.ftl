# Comment vont les mesures
quality-title = Mesures
quality-link = Comment vont les mesures, et que pratiquer
quality-heading = { $count ->
        [one] Comment vont les mesures : une visite
       *[other] Comment vont les mesures : { $count } visites
    }
quality-days = Du { $from } au { $to }. Pour soutenir, pas pour classer : les petits nombres oscillent.
quality-sieve = Choisir un mois
quality-recent = Les 90 derniers jours
quality-lede = Ce qui ressort est une raison de peser et de mesurer une fois ensemble, pas une faute. Moins de { $least } mesures ne sont pas jugées.
quality-by-worker = Par agent, dans l’ordre des noms
quality-visits = Visites
quality-digits-weight = Derniers chiffres inégaux des poids
quality-digits-weight-do = Lisez la balance jusqu’au dernier chiffre et dites-le à voix haute avant d’écrire. Regardez si la balance est réglée au plus fin, à plat et à zéro.
quality-digits-length = Derniers chiffres inégaux des tailles
quality-digits-length-do = Mesurez à deux : l’un tient, l’autre lit le millimètre à hauteur des yeux et le dit à voix haute. Regardez si la toise a du jeu.
quality-digits-arm = Derniers chiffres inégaux des bras
quality-digits-arm-do = Lisez le ruban au repère de la fenêtre, au millimètre, aussi près d’un bord de couleur.
quality-complete-weight = Visites avec un poids, %
quality-complete-weight-do = Demandez ce qui a gêné : la balance, le chemin, le temps, la famille. Prévoyez la visite quand la balance est libre.
quality-complete-length = Visites avec une taille, %
quality-complete-length-do = Demandez si la toise peut être portée et si quelqu’un aide à tenir. Une taille une visite sur deux vaut mieux qu’aucune.
quality-complete-arm = Visites avec un bras, dès 6 mois, %
quality-complete-arm-do = Le ruban ne pèse rien : gardez-en un dans le sac de chaque agent.
quality-outside = Hors des limites, %
quality-outside-do = Mesurez ces enfants encore une fois ensemble ; regardez les dates de naissance, kilogrammes et grammes, couché et debout.
quality-repeated = Même poids qu’avant, %
quality-repeated-do = Pesez à nouveau à chaque visite et écrivez avant de regarder le dernier poids.
quality-arrival = Jours jusqu’à l’arrivée, milieu
quality-corrected = Corrigées ensuite
quality-too-few = trop peu
quality-look = à revoir
quality-limits = À revoir
quality-above = plus de { $limit }
quality-below = moins de { $limit }
quality-try = Ce qu’on peut essayer ensemble
quality-spread = L’écart entre les z-scores
quality-spread-hint = Pour information : les enfants suivis ne sont pas un échantillon, donc rien n’est jugé. Des valeurs bien plus écartées que d’habitude peuvent venir d’âges faux, de lectures hâtives, ou d’enfants très différents.
quality-spread-caption = Tous ensemble
quality-index = Indice
quality-n = z-scores
quality-mean = Moyenne
quality-sd = Écart-type
quality-usual = Habituel dans les enquêtes
quality-from-to = { $from } à { $to }
quality-file = Tous les chiffres par zone et par agent dans un fichier (CSV), pour le programme seulement
quality-sources = Inégalité des derniers chiffres, de 0 égal à 90 tous pareils, et part hors des limites : OMS et UNICEF 2019, de mémoire. Écarts-types habituels : OMS 1995, de mémoire. Les limites de 20, 5 et 90 sont notre choix ou une pratique courante. Les chiffres de personne ne quittent le programme.
