# Le protocole comme document, l’essai d’un nouveau, son adoption.

# Parties du document
doc-page-title = Protocole d’alimentation
doc-title = Protocole d’alimentation { $id }, version { $version }
doc-not-approved = Approuvé par aucun clinicien.
doc-approved = Approuvé par { $by }.
doc-approved-on = Approuvé par { $by } le { $date }.
doc-effective = Il juge les visites dès le { $date }.
doc-local = Il suit le protocole local : { $name }.
doc-purpose = Ce document est écrit à partir du protocole avec lequel le programme travaille, chiffre par chiffre. Ce n’est pas un avis médical. Là où le protocole national ou local diffère, c’est lui qui décide.
doc-marks = Chaque chiffre porte sa source. « From memory » : une source publiée citée sans être relue. « Common practice » : pratique courante, sans source unique. « Our own choice » : notre choix, à confirmer par le programme.
doc-fact = { $name } :
doc-contents = Parties
doc-source = Source : { $source }

doc-cautions = Mises en garde
doc-ages = Âges
doc-start-age = Premiers aliments solides sans suivi, au plus tôt
doc-grace = Jours de délai après 6 mois avant que les solides soient en retard
doc-settling = Jours après les premiers solides pendant lesquels les règles de repas se taisent
doc-exit-age = Âge de sortie
doc-correction = Âges des enfants nés avant 37 semaines
doc-correction-how = corrigés jusqu’à 24 mois pour la croissance et les étapes, jamais pour les signes de danger

doc-stages = Étapes
doc-stages-what = Par âge, corrigé pour une naissance avant terme. Un suivi s’ouvre seulement sous le minimum ; ce que l’on espère est un conseil. Les premières bouchées recouvrent l’étape de l’âge jusqu’à ce que les solides soient installés.
doc-stage = Étape
doc-stage-age = De { $from } à { $to } mois
doc-stage-first = au début des solides
doc-texture = Texture espérée
doc-texture-least = pas moins que { $texture }
doc-meals-bf = Repas par jour, allaité
doc-meals-nbf = Repas et prises de lait, non allaité
doc-range = { $from } à { $to }
doc-least = au moins { $n }
doc-least-milk = lait au moins { $n }
doc-snacks = Goûters
doc-amount = Quantité par repas
doc-cups = { $n } d’une tasse de 250 ml
doc-cup-half = la moitié
doc-cup-three-quarters = les trois quarts
doc-spoons-to-cups = { $spoons }, puis jusqu’à { $cups }
doc-spoons = { $n } cuillères à soupe
doc-energy = Énergie des aliments, kcal par jour
doc-energy-bf = allaité { $n }
doc-energy-nbf = non allaité { $n }
doc-none = –

doc-thickness = Épaisseur et énergie
doc-density-0 = Aliment liquide
doc-density-1 = Aliment lisse et épais
doc-density-2 = Aliment écrasé ou plus riche
doc-density-least = Une recette en dessous est trop claire
doc-kcal-per-g = { $n } kcal par gramme
doc-stomach = Ce qu’un estomac contient
doc-g-per-kg = { $n } g par kg de poids du corps

doc-foods = Aliments
doc-foods-what = { $count ->
        [one] { $count } aliment.
       *[other] { $count } aliments.
    } Sans autre mention, un aliment se propose dès 180 jours.
doc-food = Aliment
doc-food-iron = Fer
doc-food-allergen = Allergène courant
doc-food-from = Dès
doc-food-safe = Forme sûre
doc-food-choking = peut étouffer
doc-food-local = Conseil local
doc-food-wait = attendre { $months } mois, { $policy }
doc-food-unhealthy = peu sain
doc-food-sweet-drink = boisson sucrée
doc-food-drink = une boisson, ne compte jamais comme aliment
doc-food-kcal = { $n } kcal pour 100 g
doc-food-kcal-source = · Énergie d’après :
doc-food-hidden = n’est plus proposé
doc-group-none = Dans aucun groupe
doc-food-days = { $n } jours

doc-modes = Allergènes et lait
doc-mode-allergens = Allergènes courants
doc-mode-milk = Non allaité, de 6 à 11 mois : lait

doc-rules = Règles : { $theme }
doc-rules-marks = Sur quoi reposent les { $count } règles : { $memory } s’appuient sur une source citée de mémoire, { $practice } sur une pratique courante, { $own } sur un choix du programme, en tout ou en partie.
doc-rule-off = Éteinte : ce programme ne l’utilise pas.
doc-rule-safety = Protège d’un danger : ne peut pas être éteinte.
doc-rule-do = Ce que fait l’agent
doc-rule-closes = Se ferme
doc-way-test = à la première visite d’un jour suivant où ceci est vrai
doc-way-two-visits = à la seconde de deux visites, à { $days } d’écart ou plus, où ceci est vrai
doc-way-care = quand un agent de santé a vu l’enfant ou décidé
doc-way-care-and-test = quand un agent de santé a vu l’enfant et qu’à une visite ceci est vrai
doc-way-test-or-care = quand un agent de santé a vu l’enfant, ou à la première visite d’un jour suivant où ceci est vrai
doc-way-decision = quand un agent de santé nommé ou un superviseur a décidé
doc-way-correction = quand la fiche est corrigée
doc-way-list = quand ce n’est plus le cas

doc-urgency = Degrés d’urgence et délais
doc-class = Degré
doc-class-check = Contrôle après
doc-class-supervisor = En retard pour le superviseur
doc-class-manager = Compté en retard par le responsable
doc-class-late = { $count ->
        [0] le jour prévu
        [one] { $count } jour après
       *[other] { $count } jours après
    }
doc-month-floor = Un contrôle à la prochaine visite prévue n’est jamais avant { $days } après la visite.

doc-visits = Visites
doc-visits-slots = Des visites sont prévues à ces âges
doc-slot-days = { $n } jours
doc-slot-months = { $n } mois
doc-slot-both = { $months } mois et { $days } jours
doc-visits-opens = Une visite peut venir { $days } avant son jour
doc-visits-closes = Dès { $months } mois elle peut venir { $days } après
doc-visits-registered = Une visite dont le jour est { $days } ou plus avant l’enregistrement n’est pas attendue

doc-measuring = Mesurer
doc-tolerance-weight = Deux pesées soigneuses peuvent différer de
doc-tolerance-length = Deux tailles de
doc-tolerance-arm = Deux mesures du bras de

doc-coaching = Conseils
doc-coaching-danger = Sur un danger, dit en premier
doc-recipes = Recettes
doc-recipe-parts = Ce qui entre
doc-recipe-water = Eau
doc-recipe-ml = { $n } ml
doc-recipe-cooked = Poids une fois cuit
doc-recipe-textures = Textures
doc-recipe-keeps = Se garde
doc-recipe-keeps-how = cuit { $room } heures à température ambiante, { $cold } heures au froid
doc-recipe-flour = farine { $room } jours à température ambiante, { $cold } jours au froid
doc-recipe-energy = Densité d’énergie
doc-recipe-warnings = Attention
doc-recipe-steps = Préparation

doc-review = Relecture et signature
doc-review-what = J’ai lu le protocole { $id }, version { $version }, avec ses { $count } règles et { $foods } aliments.
doc-review-fine = Relu : tel quel
doc-review-changes = Relu : changements souhaités, notés ci-dessous
doc-review-name = Nom
doc-review-role = Fonction et lieu de travail
doc-review-date = Date
doc-review-sign = Signature
doc-review-notes = Changements souhaités

# La page
protocol-print-hint = Imprimez cette page pour qu’un clinicien la relise et la signe.
protocol-all = Versions adoptées
protocol-version = Version
protocol-from = En vigueur dès
protocol-approved-by = Approuvé par
protocol-adopted = Adopté
protocol-reason = Raison
protocol-by-program = par le programme à son démarrage
protocol-by-command = en ligne de commande
protocol-in-force = en vigueur aujourd’hui
protocol-to-come = à venir
protocol-nobody = personne encore
protocol-file = Le fichier lui-même (TOML)
protocol-rehearse = Essayer un changement
protocol-done-adopted = Adopté. Les listes sont mises à jour en quelques minutes.
protocol-done-adopted-from = Adopté. Il compte à partir du { $date } ; jusque-là les listes restent comme elles sont.

# L’essai
rehearse-title = Essayer un protocole
rehearse-lede = Voyez comment les suivis d’aujourd’hui changeraient sous un autre fichier de protocole. Rien n’est gardé ni changé.
rehearse-step-1 = Prenez le fichier en vigueur, changez une copie et donnez-lui une nouvelle version.
rehearse-step-2 = Choisissez le fichier modifié, ou mettez tout son texte ci-dessous.
rehearse-file = Le nouveau fichier
rehearse-file-hint = Un fichier texte en UTF-8, au plus { $kilobytes } ko. Si un fichier est choisi, le texte ci-dessous n’est pas lu.
rehearse-chosen = Le fichier choisi :
rehearse-file-too-large = Le fichier dépasse { $kilobytes } ko, ce dont aucun protocole n’a besoin. Choisissez le fichier même du protocole.
rehearse-file-not-text = Le fichier n’est pas un texte en UTF-8. Enregistrez-le en UTF-8 dans un éditeur de texte, puis choisissez-le de nouveau.
rehearse-text = Texte du nouveau fichier
rehearse-hint = Le fichier entier, en TOML.
rehearse-button = Essayer
rehearse-again = Essayer de nouveau
rehearse-how = Toute l’histoire de chaque enfant est jugée comme si le nouveau protocole avait toujours été en vigueur. Le jour de l’adoption, la liste ne saute pas : ce qui est ouvert garde sa version, seules les visites dès ce jour sont jugées par le nouveau, et les visites à venir sont attendues comme il le dit.
rehearse-not-loaded = Le fichier ne peut pas être utilisé : { $count ->
        [one] { $count } chose à corriger
       *[other] { $count } choses à corriger
    }. Rien n’a été changé.
rehearse-fault = Ligne { $line }, { $key } :
rehearse-fault-line = Ligne { $line } :
rehearse-parser-says = L’analyseur dit, en anglais :
rehearse-nothing = Sous { $id } { $version } rien ne changerait pour { $count ->
        [one] { $count } enfant regardé
       *[other] { $count } enfants regardés
    }.
rehearse-heading = Sous { $id } { $version } quelque chose changerait pour { $touched } sur { $count ->
        [one] { $count } enfant
       *[other] { $count } enfants
    }.
rehearse-as-of = Au { $date }, comparé à { $id } { $version }.
rehearse-work = Travail
rehearse-work-open = Sur la liste : suivis et visites en retard
rehearse-work-week = Nouveaux suivis par semaine (moyenne des 4 dernières semaines)
rehearse-work-children = Enfants sur la liste
rehearse-now = Maintenant
rehearse-then = Alors
rehearse-by-class = Par degré
rehearse-by-rule = Par règle
rehearse-by-area = Par village
rehearse-by-worker = Par agent
rehearse-rule = Règle
rehearse-area = Village
rehearse-worker = Agent
rehearse-opened = Ouverts
rehearse-closed = Fermés
rehearse-raised = Plus urgents
rehearse-lowered = Moins urgents
rehearse-moved = Autre jour
rehearse-week-now = Par semaine, maintenant
rehearse-week-then = Par semaine, alors
rehearse-unchanged = Règles où rien ne changerait
rehearse-all = Tous
rehearse-children = Les enfants derrière ces nombres
rehearse-counts-only = Seul leur superviseur voit quels enfants ce sont.
rehearse-kind-opened = serait sur la liste : { $then }
rehearse-kind-closed = ne serait pas sur la liste ; maintenant { $now }
rehearse-kind-raised = plus urgent, de { $now } à { $then }
rehearse-kind-lowered = moins urgent, de { $now } à { $then }
rehearse-kind-moved = contrôle le { $date } au lieu du { $before }
rehearse-kind-list = liste de visites
rehearse-child-line = { $area }, { $worker } : { $what }

# L’adoption
adopt-heading = Adopter ce protocole
adopt-lede = Dès son jour, les visites sont jugées par lui. Les visites d’avant et les suivis qu’elles ont ouverts gardent la version qui les a jugés.
adopt-approved-by = Qui l’a approuvé
adopt-approved-hint = Le clinicien ou la personne responsable, avec son titre.
adopt-from = Premier jour en vigueur
adopt-from-hint = Aujourd’hui ou plus tard. Dès aujourd’hui : les visites écrites aujourd’hui sont jugées de nouveau.
adopt-reason = Pourquoi
adopt-reason-hint = Ce qui change et qui l’a demandé. Gardé au registre.
adopt-button = Adopter
adopt-supervisor = L’adoption revient à un administrateur.
