# Pourquoi un suivi est là : quand il se ferme et ce qui manque encore, son histoire, et le texte à lire à un clinicien.

# Le test de chaque règle, tel qu’il doit être à une visite suivante
clears-danger = Aucun de ces signes de danger, à une visite où ils sont demandés.
clears-oedema-both-feet = Les deux pieds regardés et non enflés.
clears-wasting = Un bras de { $muac } ou plus, les deux pieds regardés et non enflés, et un poids pour la taille de { $wlz } ou plus si la taille est prise.
clears-wasting-young = Bras de { $muac } ou plus et poids pour la taille de { $wlz } ou plus ; ce qui l’a déclenché doit être mesuré à nouveau.
clears-weight-very-low = Poids pour l’âge de { $limit } ou plus.
clears-weight-low = Poids pour l’âge de { $limit } ou plus.
clears-weight-loss = Un poids au-dessus de { $weight }, à partir du { $date }.
clears-weight-static = { $days ->
        [none] Un poids supérieur à celui d’une visite assez longtemps avant.
        [one] Plus de 0 g de pris depuis une pesée au moins { $days } jour avant.
       *[other] Plus de 0 g de pris depuis une pesée au moins { $days } jours avant.
    }
clears-weight-slow-gain = { $days ->
        [none] Au moins la prise espérée à cet âge, depuis une visite antérieure.
        [one] Au moins la prise espérée à cet âge, entre deux pesées à { $days } jour d’écart ou plus.
       *[other] Au moins la prise espérée à cet âge, entre deux pesées à { $days } jours d’écart ou plus.
    }{ $floor ->
        [none] { "" }
       *[other] { " " }La dernière fois que c’était le cas : { $floor } en { $interval_days } jours.
    }
clears-weight-drop = Du poids gagné depuis une visite antérieure, et une ligne de poids tombée de moins de { $limit }.
clears-weight-drift = Poids pour l’âge au-dessus de { $waz }.
clears-birth-weight-not-regained = Un poids de { $birth_weight } ou plus.
clears-birth-low = Un plan du centre de santé est noté, ou le { $date } est venu.
clears-length-low = Taille pour l’âge de { $limit } ou plus.
clears-weight-high = Poids pour la taille de { $limit } ou moins.
clears-solids-early = Demandé, et aucun aliment solide ; ou un plan du centre de santé ; ou le { $date } est venu.
clears-liquids-early = Demandé, et aucune autre boisson ; ou le { $date } est venu.
clears-milk-animal-early = Demandé, et aucun lait animal ; ou un plan du centre de santé ; ou le { $date } est venu.
clears-solids-late = Des aliments solides commencés.
clears-texture-behind = { $texture_expected ->
        [none] La texture de l’âge est prise.
       *[other] Prend { $texture_expected } ou plus épais.
    }
clears-texture-watery = L’aliment habituel tient sur la cuillère.
clears-meals-few = { $least ->
        [none] Autant de repas que l’âge le demande.
       *[other] Au moins { $least } repas par jour, ou autant que l’âge en demande alors.
    }
clears-milk-few = Allaité, ou au moins { $least } prises de lait par jour.
clears-diversity-low = Au moins { $least } groupes d’aliments sur 8 la veille.
clears-iron-none = Viande, poisson ou une autre source de fer la veille.
clears-animal-food-none = Œuf, poisson, viande ou produit laitier la veille.
clears-veg-fruit-none = Fruit ou légume la veille.
clears-drink-sweet = Demandé, et aucune boisson sucrée.
clears-bottle-used = Demandé, et aucun biberon.
clears-food-honey = Signes de danger demandés et aucun de ceux que le miel peut causer, à partir du { $date } ; ou des soins au centre de santé sont notés.
clears-food-choking = Chacun de ces aliments donné sous une forme connue comme sûre.
clears-food-low-value = Demandé, et rien de cela.
clears-food-local-wait = { $date ->
        [none] L’âge du protocole local est venu.
       *[other] Le { $date } est venu.
    }
clears-breastfeeding-stopped = Allaité, ou un plan du centre de santé.
clears-breastfeeding-trouble = Demandé, et aucune difficulté.
clears-appetite-poor = Demandé, et la nourriture refusée depuis moins de { $days } jours.
clears-data-z-outside = Ce qui était improbable est probable maintenant, ou mesuré à nouveau et gardé.
clears-data-weight-jump = Un poids sans un tel saut, ou mesuré à nouveau et gardé.
clears-data-length-shrunk = Une taille qui n’est pas plus courte, ou mesurée à nouveau et gardée.
clears-data-length-jump = Une taille sans un tel saut, ou mesurée à nouveau et gardée.
clears-data-same-again = Un poids qui diffère, ou mesuré à nouveau et gardé.
clears-data-conflict = Les réponses concordent.
clears-measure-missing = Un poids.

# Le chemin
close-way-test = Il se ferme à la première visite d’un jour suivant où ceci est vrai :
close-way-two-visits = { $days ->
        [one] Il se ferme à la seconde de deux visites, séparées d’au moins { $days } jour, où ceci est vrai :
       *[other] Il se ferme à la seconde de deux visites, séparées d’au moins { $days } jours, où ceci est vrai :
    }
close-way-care = Il se ferme quand quelqu’un note à une visite suivante que l’enfant a été vu, soigné ou hospitalisé.
close-way-care-and-test = Il se ferme quand quelqu’un a noté que l’enfant a été vu, soigné ou hospitalisé, et qu’à une visite ceci est vrai :
close-way-test-or-care = Il se ferme à la première visite d’un jour suivant où ceci est vrai :
close-way-decision = Il se ferme quand quelqu’un note à une visite suivante ce qu’un soignant ou un superviseur a décidé.
close-way-correction = Il ne se ferme que si la fiche est corrigée.

# Ce qui manque encore pour cet enfant
close-missing = Il manque encore : { $what }
close-none-of-two = les deux visites en ordre.
close-one-of-two = la seconde visite en ordre. La première était le { $first } ; une autre compte à partir du { $from }.
close-a-visit = une telle visite. Personne n’en a noté depuis le { $date }.
close-care = ce que le centre de santé a fait. Aucune issue n’est notée depuis le { $date }.
close-care-told = Ce que le centre de santé a fait est noté. Une visite sans ces signes manque encore.
close-decision = la décision. Aucune n’est notée depuis le { $date }.
close-newest-met = À la visite du { $date }, c’était le cas.
close-newest-not = À la visite du { $date }, ce n’était pas encore le cas.
close-newest-lacking = À la visite du { $date }, on ne pouvait pas le dire. Elle ne dit rien de : { $what }.
close-newest-untold = À la visite du { $date }, on ne pouvait pas le dire.

# Histoire
why-happened-opened = Ouvert
why-happened-refreshed = Toujours le cas
why-happened-raised = Plus urgent
why-happened-kept = Gardé
why-happened-outcome = Issue notée
why-happened-closed = Fermé
why-reason-rule = la règle s’appliquait
why-reason-milder = seul, ce serait { $class } ; le plus urgent reste
why-reason-missing = une chose nécessaire n’a pas été mesurée ou demandée
why-reason-not-now = la règle ne vaut pas à cet âge ou à cette visite
why-reason-not-yet = pas encore en ordre
why-reason-needs-outcome = seule une issue ou une décision le ferme
why-reason-off = la règle est désactivée dans le protocole
why-reason-clear = en ordre, mais il faut plus
why-reason-covered = couvert par : { $rule }
why-reason-treatment = en traitement pour maigreur
why-reason-replaced = remplacé par : { $rule }
why-record = Changements de la fiche
why-protocol-source = Source dans le protocole
why-also-silenced = couvert : de la même chaîne, et « { $rule } » est plus haut
why-also-muted = attend tant que ceci dure
why-also-treatment = muet tant que l’enfant est en traitement

# À lire à un clinicien
aloud-link = Texte à lire au téléphone
aloud-title = À lire à un clinicien : { $code }
aloud-heading = À lire à un clinicien
aloud-how = Lisez lentement, ligne par ligne. Le nom, la famille et le lieu n’y sont pas : ne dites le nom que si le clinicien le demande.
aloud-plain = Le même en texte simple
aloud-who = Enfant { $code } : { $sex }, âge { $age }.
aloud-early = Né avant terme. Âge corrigé { $age }.
aloud-not-corrected = La durée de la grossesse n’est pas connue. L’âge n’est pas corrigé.
aloud-found = Ce qui a été trouvé
aloud-seen = Le { $date }, { $where }.
aloud-urgency = { $class }. À revoir au plus tard le { $date }.
aloud-closed = Fermé le { $date } : { $reason }.
aloud-measured = Dernières mesures
aloud-none-measured = Rien n’a été mesuré.
aloud-at = { $date }, âge { $age } :
aloud-weight = poids { $value }
aloud-length = taille { $value }
aloud-arm = bras { $value }
aloud-waz = poids pour l’âge { $value }
aloud-laz = taille pour l’âge { $value }
aloud-wlz = poids pour la taille { $value }
aloud-feet-swollen = les deux pieds enflés
aloud-feet-fine = pieds non enflés
aloud-suspect = { $measurement } improbable, à reprendre
aloud-signs = Signes de danger
aloud-signs-none = Demandés le { $date } : aucun.
aloud-signs-seen = Demandés le { $date } : { $signs }.
aloud-signs-not-asked = Non demandés.
aloud-advised = Ce qui a été conseillé
aloud-told = Ce qu’il en est advenu
aloud-told-line = { $date } : { $outcome }.
aloud-told-none = Rien n’a été dit jusqu’ici.
aloud-also = Aussi ouvert
aloud-also-line = { $rule }. { $class }.
aloud-cautions = Précautions
aloud-protocol = Protocole { $protocol }, version { $version }.
aloud-minus = moins { $number }
aloud-kg = { $number } kilogrammes
aloud-g = { $number } grammes
aloud-cm = { $number } centimètres
aloud-mm = { $number } millimètres
aloud-percent = { $number } pour cent
aloud-as-of = Tel que c’était le { $date }.
needed-weight = poids
needed-length = taille
needed-arm = bras
needed-feet = les deux pieds
needed-signs = signes de danger
needed-solids = aliments solides
needed-texture-best = meilleure texture
needed-texture-usual = texture habituelle
needed-meals = repas
needed-groups = groupes d’aliments
needed-iron = source de fer
needed-breastfed = allaitement
needed-breast-trouble = difficultés d’allaitement
needed-other-drink = autres boissons
needed-animal-milk = lait animal
needed-sweet-drink = boissons sucrées
needed-bottle = biberon
needed-low-value = thé, café, sel et sucre
needed-foods = aliments et leur forme
needed-appetite = appétit
aloud-number = { $name } : { $value }.
aloud-z = score z { $number }
aloud-step = { $date } : { $what }. { $why }.
