# Recipes: list and card. A card is read aloud: short sentences.

recipes-title = Recettes
recipes-start = l’accueil
recipes-for-child-link = Recettes pour cet enfant
recipes-all-link = Toutes les recettes
recipes-lede = Des plats épais avec ce qui pousse et se pêche ici. Ouvrez-en un pour l’imprimer ou le lire à voix haute.
recipes-open-one = Ouvrez-en une pour l’imprimer ou la lire à voix haute.
recipes-none = Le protocole du programme n’a pas encore de recettes.
recipes-milk-only = { $name } n’a besoin que de lait. Les recettes sont pour plus tard.
recipes-suit = { $count ->
        [0] Aucune recette ne convient telle quelle à { $name }
        [one] { $count } recette convient à { $name }
       *[other] { $count } recettes conviennent à { $name }
    }
recipes-taste = Pour goûter ou en collation, à côté d’un repas
recipes-ask-first = Demander d’abord, ou donner d’abord autre chose
recipes-later = Plus tard
recipes-no = À ne pas donner maintenant
recipes-urgent = Une urgence est ouverte pour { $name }. Elle passe d’abord.
recipes-urgent-link = Aller à l’urgence
recipes-on-hold = En attente depuis le { $since } : { $food }
recipes-known-allergy = Un clinicien a nommé une allergie alimentaire de cet enfant.
recipes-known-allergy-do = L’aliment n’est pas noté ici. Demandez à la famille avant toute recette, et ne donnez jamais cet aliment.
recipes-caution = Une recette est un conseil, pas un traitement. Suivez votre protocole local et ce qu’un clinicien a dit.
recipes-from = { $count ->
        [one] dès { $count } mois
       *[other] dès { $count } mois
    }
recipes-density = { $density } kcal par gramme
recipes-density-thin = { $density } kcal par gramme : trop liquide pour un repas
recipes-textures = { $from }, jusqu’à { $to }
recipes-holds = contient { $allergens }

# What to know before a child gets it
recipes-remark-on-hold = En attente depuis le { $since } après une réaction ({ $worst }) : { $food }. Ne pas donner avant qu’un agent de santé dise que c’est sans danger.
recipes-remark-on-hold-like = { $food } ressemble à { $held }, en attente depuis le { $since } après une réaction ({ $worst }). Ne pas donner avant qu’un agent de santé dise que c’est sans danger.
recipes-remark-milk-only = Le lait suffit. Ni eau, ni tisane, ni aliment avant 6 mois.
recipes-remark-too-young = { $food } : pas avant le { $day }.
recipes-remark-waits = { $food } : le protocole local dit d’attendre le { $day }.
recipes-remark-allergy = Contient : { $allergens }. Une allergie alimentaire est connue : demander d’abord.
recipes-remark-eczema = Eczéma sévère : demander à un clinicien avant la première fois ({ $allergens }).
recipes-remark-texture = Plus de morceaux que prévu à cette étape : { $texture }.
recipes-remark-swallowing = Un trouble pour avaler est ouvert : pas encore { $texture }. Un agent de santé dit quand.
recipes-remark-new = Nouveau pour cet enfant : { $foods }. Un seul aliment nouveau à la fois : donnez chacun seul d’abord.
recipes-remark-allergy-not-asked = Demandez d’abord si l’enfant a une allergie alimentaire : personne ne l’a noté.
recipes-remark-first-taste = Première fois ({ $allergens }) : le matin, à la maison, bébé en forme. Restez et observez 2 heures.
recipes-remark-smoother = Plus lisse que souhaité maintenant. Écrasez moins, jusqu’à : { $texture }.

# The card
recipes-card-no = Ne pas donner maintenant.
recipes-card-from = { $count ->
        [one] Dès { $count } mois.
       *[other] Dès { $count } mois.
    }
recipes-card-texture = Texture : { $texture }.
recipes-card-too-thin = { $density } kcal par gramme, moins de { $least } : trop liquide pour un repas. Bon comme première bouchée ou goûter à côté d’un repas.
recipes-card-meals = Avec ce plat, il faut à cet enfant au moins { $meals } par jour.
recipes-card-meals-more = Plus est bienvenu. Le lait continue comme avant.
recipes-card-parts = Ce qu’il faut
recipes-card-water = { $count ->
        [one] { $cups } tasse d’eau ({ $ml } ml)
       *[other] { $cups } tasses d’eau ({ $ml } ml)
    }
recipes-card-steps = Comment faire
recipes-card-wash = Lavez vos mains et celles de l’enfant au savon. Prenez des casseroles propres et de l’eau sûre.
recipes-card-makes = Cela fait environ { $g }.
recipes-card-care = Attention
recipes-card-allergens = Contient : { $allergens }, souvent cause d’allergie.
recipes-card-first-taste = La première fois le matin, à la maison, bébé en forme ; restez et observez 2 heures.
recipes-card-reacted = Ne donnez jamais à un enfant qui a réagi à cet aliment.
recipes-card-keeps = Combien de temps cela se garde
recipes-card-keeps-room = { $count ->
        [0] Donnez tout de suite. Ne gardez pas.
        [one] Cuit : au plus { $count } heure hors du froid ; moins par grande chaleur.
       *[other] Cuit : au plus { $count } heures hors du froid ; 1 heure par grande chaleur.
    }
recipes-card-keeps-cold = { $count ->
        [one] Dans un réfrigérateur qui marche (5 °C ou moins) : { $count } heure.
       *[other] Dans un réfrigérateur qui marche (5 °C ou moins) : { $count } heures.
    }
recipes-card-reheat = Réchauffez jusqu’à la vapeur, remuez, laissez refroidir.
recipes-card-bowl = Jetez ce qui reste dans le bol.
recipes-card-keeps-flour = La farine dans une boîte fermée : { $room } jours, au froid { $cold }.
recipes-card-groups = Cela compte comme : { $groups }.
recipes-card-iron = Cela donne du fer bien absorbé.
recipes-card-print = Imprimez cette page en A5 ou A4, ou lisez-la à voix haute, une étape à la fois.
recipes-card-energy = Comment l’énergie est calculée
recipes-energy-part = { $g } g × { $per } kcal pour 100 g = { $kcal } kcal.
recipes-energy-sum = Ensemble { $kcal } kcal dans { $g } g cuits = { $density } kcal par gramme.
recipes-energy-given = Donné par le protocole : { $density } kcal par gramme.
recipes-energy-this = Cette recette
