# A word for each code of the programme. The code is in the id; it never changes, the words may.


# Sex
sex-f = fille
sex-m = garçon

# How the weeks of pregnancy are known
gestation-source-scan = échographie pendant la grossesse
gestation-source-card = carnet de santé
gestation-source-last-period = dernières règles
gestation-source-family = souvenir de la famille
gestation-source-unknown = on ne sait pas

# In the programme or not
child-status-active = dans le programme
child-status-transferred-out = passé à un autre programme
child-status-moved = famille partie
child-status-died = décédé
child-status-consent-withdrawn = accord retiré par la famille
child-status-aged-out = a atteint 24 mois
child-status-refused = la famille ne veut pas de visites

# Food groups
food-group-breast-milk = Lait maternel
food-group-grains-roots = Céréales, racines
food-group-pulses-nuts = Haricots, noix
food-group-dairy = Lait, yaourt, fromage
food-group-flesh = Poisson, viande
food-group-eggs = Œuf
food-group-vit-a = Fruits et légumes orange, feuilles vertes
food-group-other-fv = Autres fruits et légumes

# Common allergens
allergen-milk = lait animal
allergen-egg = œuf
allergen-peanut = arachide
allergen-tree-nut = noix d’arbre
allergen-wheat = blé
allergen-soy = soja
allergen-fish = poisson
allergen-shellfish = crustacés
allergen-sesame = sésame

# How a food was taken
response-accepted = Accepté
response-refused = Refusé
response-reaction = Réaction

# Signs after a food
reaction-sign-rash-local = rougeur autour de la bouche
reaction-sign-hives-widespread = plaques sur tout le corps
reaction-sign-swelling-face = visage ou yeux gonflés
reaction-sign-vomiting-once = a vomi une fois
reaction-sign-vomiting-repeated = vomit encore et encore
reaction-sign-loose-stools = selles liquides
reaction-sign-eczema-flare = eczéma aggravé
reaction-sign-wheeze = respiration sifflante
reaction-sign-breathing-trouble = du mal à respirer
reaction-sign-hoarse-cry = cri enroué
reaction-sign-swollen-tongue-throat = langue ou gorge gonflée
reaction-sign-pale-floppy = pâle et tout mou
reaction-sign-collapse = perte de connaissance
reaction-sign-sleepy-pale = endormi et pâle

# Texture, by its word: the step number is for the file
texture-0 = liquide
texture-1 = lisse et épais
texture-2 = écrasé, morceaux mous
texture-3 = haché, à prendre en main
texture-4 = plat familial
texture-short-0 = Lait
texture-short-1 = Lisse
texture-short-2 = Écrasé
texture-short-3 = Haché
texture-short-4 = Familial
texture-test-0 = coule de la cuillère penchée
texture-test-1 = reste sur la cuillère, sans morceaux
texture-test-2 = les morceaux s’écrasent entre deux doigts
texture-test-3 = morceaux mous que le bébé prend
texture-test-4 = plat de la famille, coupé petit

# Where or how the family was met
contact-home = À la maison
contact-clinic = Au centre de santé
contact-phone = Par téléphone

# How the length was taken
position-lying = couché
position-standing = debout

# Measurements
measurement-weight = poids
measurement-length = taille
measurement-muac = bras

# Signs of danger
danger-sign-cannot-feed = Ne peut ni boire ni téter
danger-sign-vomits-everything = Vomit tout
danger-sign-fits-in-illness = A convulsé pendant cette maladie
danger-sign-fits-now = Convulse maintenant
danger-sign-unconscious = Inconscient
danger-sign-lethargic = Très endormi, difficile à réveiller
danger-sign-fast-breathing = Respire vite, compté deux fois
danger-sign-chest-indrawing = Le thorax se creuse à la respiration
danger-sign-stridor-calm = Bruit rude en inspirant, au calme
danger-sign-trouble-breathing = A du mal à respirer
danger-sign-fever-or-cold = Chaud (37,5 °C ou plus) ou froid (moins de 35,5 °C)
danger-sign-moves-only-when-touched = Ne bouge que si on le touche, ou pas du tout
danger-sign-not-feeding-well = Se nourrit mal
danger-sign-sunken-eyes-slow-pinch = Yeux enfoncés, le pli de peau s’efface très lentement
danger-sign-blood-in-stool = Sang dans les selles
danger-sign-stiff-neck = Nuque raide
danger-sign-constipation = Selles dures ou rares
danger-sign-weak-cry = Cri faible
danger-sign-floppy = Tout mou
danger-sign-poor-suck = Tète faiblement
danger-sign-droopy-lids = Paupières tombantes

# Ready for solid food
readiness-sign-head-steady = Tient la tête droite si on le soutient
readiness-sign-sits-supported = Tient assis avec peu d’appui
readiness-sign-mouths-objects = Porte mains ou objets à la bouche
readiness-sign-turns-to-food = Se tourne vers la nourriture ou ouvre la bouche
readiness-sign-swallows = Pousse la nourriture vers l’arrière et avale

# Foods and drinks of low value
low-value-tea-coffee = Thé ou café
low-value-salt = Sel ajouté
low-value-sugar = Sucre ajouté

# Swallowing
swallow-trouble-none = Pas de difficulté
swallow-trouble-repeated = S’étouffe, tousse ou voix mouillée, plus d’une fois
swallow-trouble-blue = Devient bleu en mangeant

# What became of a follow-up
outcome-seen = Vu par un soignant
outcome-treated = Soigné
outcome-admitted = Hospitalisé
outcome-in-treatment = Dans un programme de traitement nutritionnel
outcome-discharged = Sorti du traitement
outcome-decision = Un soignant ou superviseur nommé a décidé
outcome-refused = La famille n’a pas voulu y aller
outcome-not-reached = Pas pu être joint

# Roles
role-worker = agent de terrain
role-supervisor = superviseur
role-manager = responsable du programme
role-administrator = administrateur

# What a role may do
action-see-children = voir les enfants de son secteur
action-register = inscrire un enfant
action-record-visit = noter et corriger les visites
action-supervise = traiter les suivis en retard d’une équipe
action-read-reports = lire les rapports mensuels
action-rehearse-protocol = voir comment la liste changerait sous un autre protocole
action-administer = gérer personnes, villages et réglages

# Themes of the rules
theme-danger = Signes de danger
theme-reaction = Réactions aux aliments
theme-growth = Croissance
theme-feeding = Alimentation
theme-data = Mesures et saisie
theme-visit = Visites

# Urgency
class-now = Urgence
class-today = Référer aujourd’hui
class-two-days = Sous 2 jours
class-week = Sous 7 jours
class-fortnight = Sous 14 jours
class-month = Prochaine visite prévue
class-visit = Visite
class-done = Fait

# Why a follow-up is no longer open
close-reason-resolved-by-visit = une visite a montré que c’est réglé
close-reason-seen-outcome-recorded = un soignant a vu l’enfant ou décidé
close-reason-in-care-elsewhere = en traitement nutritionnel
close-reason-record-corrected = la saisie a été corrigée
close-reason-replaced = un suivi plus grave a pris la suite
close-reason-supervisor-decision = fermé par un superviseur
close-reason-transferred-out = enfant passé à un autre programme
close-reason-moved = famille partie
close-reason-consent-withdrawn = accord retiré par la famille
close-reason-aged-out = l’enfant a atteint 24 mois
close-reason-refused = la famille ne veut pas de visites
close-reason-died = enfant décédé

# Where a follow-up stands
follow-up-state-open = ouvert
follow-up-state-done = fait
follow-up-state-closed-by-supervisor = fermé par un superviseur
follow-up-state-ended = terminé, enfant parti

# The numbers a finding rests on
evidence-waz = Poids pour l’âge (z)
evidence-laz = Taille pour l’âge (z)
evidence-wlz = Poids pour la taille (z)
evidence-weight = Poids
evidence-weight-before = Poids d’avant
evidence-birth-weight = Poids de naissance
evidence-length = Taille
evidence-length-before = Taille d’avant
evidence-muac = Bras
evidence-gain = Gain
evidence-floor = Gain minimal attendu
evidence-loss-percent = Part perdue
evidence-z-change = Changement de courbe (z)
evidence-z-before = Courbe d’avant (z)
evidence-interval-days = Jours entre les deux
evidence-before = Mesure précédente le
evidence-limit = Limite
evidence-limit-weight-loss = Compte si la perte dépasse
evidence-age-days = Âge en jours
evidence-age-months = Âge en mois
evidence-stage-months = Âge en mois, corrigé
evidence-gestation-days = Semaines de grossesse
evidence-signs = Signes
evidence-foods = Aliments
evidence-minutes = Minutes après l’aliment
evidence-texture = Texture actuelle
evidence-texture-expected = Texture attendue au moins
evidence-meals = Repas
evidence-milk-feeds = Prises de lait
evidence-least = Au moins
evidence-groups = Groupes d’aliments
evidence-days = Jours
evidence-date = Date
evidence-date-reaction-given-again = En pause depuis le
evidence-held-before = Pareil à la visite d’avant

# Growth indices
indicator-waz = Poids pour l’âge
indicator-laz = Taille pour l’âge
indicator-wlz = Poids pour la taille
indicator-bmiz = Indice de masse corporelle pour l’âge
indicator-mauz = Bras pour l’âge
indicator-hcz = Tête pour l’âge

# Why an index has no value
not-computable-not-measured = pas mesuré
not-computable-no-weight = pas de poids
not-computable-no-length = pas de taille
not-computable-oedema = deux pieds gonflés : le poids n’est pas celui du corps
not-computable-before-due-date = avant le terme prévu : utilisez la courbe de l’hôpital
not-computable-age-outside-table = pas de table pour cet âge
not-computable-length-outside-table = pas de table pour cette taille

# Food stages by age
stage-milk-only = Lait seulement
stage-first-tastes = Premiers goûts
stage-early-6-7 = Lisse, puis morceaux mous
stage-mid-8 = Écrasé, morceaux mous
stage-lumps-9-11 = Haché, à prendre en main
stage-family-12-14 = Le plat familial commence
stage-family-15-23 = Plat familial

# Where a food stands
food-state-not-yet = Pas encore
food-state-trying = À l’essai
food-state-accepted = Accepté
food-state-refused = Refusé
food-state-on-hold = En pause

# One list for what is quickly asked
also-iron-source = Gouttes ou poudre de fer, ou aliment enrichi en fer
also-sweet-drink = Boisson sucrée
also-unhealthy-food = Bonbons, chips ou semblable
also-bottle = Biberon avec tétine
also-tea-coffee = Thé ou café
also-salt = Sel ajouté
also-sugar = Sucre ajouté
also-honey = Miel, depuis la dernière visite
also-breastfeeding-trouble = Allaitement douloureux, peu de lait ou mauvaise prise du sein
also-ill = Malade maintenant

# Why a supervisor closes
close-category-clinician-decided = Un clinicien a vu l’enfant et décidé
close-category-seen-well = Vu à la maison : l’enfant va bien
close-category-care-elsewhere = Suivi par un autre programme ou centre de santé
close-category-wrong-record = Ce qui est écrit est faux et ne peut plus être corrigé
close-category-family-declines = La famille ne veut pas de ce suivi
close-category-other = Autre chose

# How bad a reaction to a food was
reaction-level-severe = grave
reaction-level-spreading = qui s’étend
reaction-level-mild = légère

# Where an expected visit stands
slot-state-not-yet = pas encore
slot-state-open = à faire maintenant
slot-state-late = en retard
slot-state-skipped = sautée
slot-state-seen = vue

# Where a line of advice comes from
mark-source = source publiée
mark-memory = source publiée, de mémoire
mark-practice = pratique courante
mark-own = notre choix

# How a food's local waiting age is taken
hold-policy-advise = conseil seulement
hold-policy-flag = un suivi

# Iron in a food
iron-heme = viande, poisson, foie
iron-fortified = enrichi en fer
iron-none = aucun qui compte

# What the programme advises on milk and on allergens
milk-mode-who2023 = lait infantile ou lait animal (OMS 2023)
milk-mode-avoid-main-drink = pas de lait animal comme boisson principale avant 12 mois
allergen-mode-with-solids = pas plus tard que les autres aliments
allergen-mode-local-wait = selon le protocole local
