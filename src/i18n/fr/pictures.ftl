# Les rapports en images, la feuille pour le mur et les images d’une équipe.

pic-title = Images
pic-link = Voir ce mois et l’année passée en images
pic-under = { $place } · comptes des enfants visités, pas une enquête · { $state }
pic-state-provisional = provisoire jusqu’au { $date }
pic-state-released = publié le { $date }
pic-trend-heading = Douze mois : { $place }
pic-villages-heading = Chaque village, { $month }
pic-villages-lede = Dans l’ordre de leurs codes, tous à la même échelle. Ne comparez pas des villages dont la couverture diffère.
pic-wall-link = Une feuille pour le mur

# Mesures
pic-visits = Visites faites, sur celles attendues
pic-overdue = Suivis en retard à la fin du mois
pic-underweight = Poids bas pour l’âge (sous −2)
pic-diversity = Cinq groupes d’aliments ou plus, de 6 à 23 mois
pic-short-visits = Visites faites
pic-short-overdue = Suivis en retard
pic-short-underweight = Poids bas pour l’âge
pic-short-diversity = Cinq groupes ou plus
pic-by-class = Suivis en retard à la fin du mois, par urgence
pic-of-class = { $what } : { $class }
pic-caption = { $what }, { $place }
pic-month-short = { $month } { $year }
pic-n-of-den = { $n } sur { $den }
pic-share-of = { $share } · { $of }
pic-range = { $low }–{ $high }

# Comment les lire
pic-key-visits = Contour : attendues. Plein : faites. Le temps va de gauche à droite.
pic-key-overdue = Plein : ouverts et passés leur jour à la fin du mois. Le temps va de gauche à droite.
pic-key-class = Plein : ouverts et passés leur jour à la fin du mois. Tous à une échelle ; le temps va de gauche à droite.
pic-key-share = Point : la part des enfants vus. Barre : où la part pourrait vraiment se trouver (95 %) ; moins il y a d’enfants, plus elle est longue. Le temps va de gauche à droite.
pic-key-card = Contour : attendues. Plein : faites, ou en retard. Point : la part ; barre épaisse : où elle pourrait vraiment se trouver (95 %).

# Ce qu’elles disent
pic-found-visits = { $when } : { $n } visites faites sur { $den }.
pic-found-overdue = { $when } : { $n } en retard, sur { $den } ouverts.
pic-found-underweight = { $when } : { $share }, { $n } sur { $den } enfants pesés ; la part pourrait vraiment se trouver entre { $low } et { $high } %.
pic-found-diversity = { $when } : { $share }, { $n } sur { $den } enfants interrogés ; la part pourrait vraiment se trouver entre { $low } et { $high } %.
pic-found-private = { $when } : gardé privé.
pic-found-few = { $when } : { $n } sur { $den } enfants, trop peu pour une part.
pic-found-nobody = { $when } : personne n’a été compté.
pic-months-private = { $count ->
    [one] Un mois est gardé privé.
   *[other] { $count } mois sont gardés privés.
}
pic-months-few = { $count ->
    [one] Un mois avait trop peu d’enfants.
   *[other] { $count } mois avaient trop peu d’enfants.
}
pic-months-nobody = { $count ->
    [one] Dans un mois, personne n’a été compté.
   *[other] Dans { $count } mois, personne n’a été compté.
}
pic-months-not-counted = { $count ->
    [one] Un mois n’est pas encore compté.
   *[other] { $count } mois ne sont pas encore comptés.
}
pic-months-before-start = { $count ->
    [one] Un mois est avant le programme.
   *[other] { $count } mois sont avant le programme.
}
pic-months-not-published = { $count ->
    [one] Dans un mois, cette zone n’est pas publiée.
   *[other] Dans { $count } mois, cette zone n’est pas publiée.
}
pic-count-them = Ouvrez le rapport d’un mois : il est compté alors et reste dans ces images.

# Mots dans un vide
pic-gap-private = gardé privé
pic-gap-few = trop peu
pic-gap-nobody = personne
pic-gap-not-counted = pas compté
pic-gap-before-start = avant début
pic-gap-not-published = pas publié

# Nombres
pic-numbers = Les nombres de cette image
pic-file = En fichier CSV : { $what }
pic-col-month = Mois
pic-col-what = Quoi
pic-col-n = Combien
pic-col-den = Sur
pic-col-between = 95 % entre
pic-col-n-visits = Faites
pic-col-den-visits = Attendues
pic-col-n-overdue = En retard
pic-col-den-overdue = Ouverts
pic-col-n-underweight = Bas
pic-col-den-underweight = Pesés
pic-col-n-diversity = Cinq ou plus
pic-col-den-diversity = Interrogés

# Pour le mur
pic-wall-how = Imprimez cette page : elle tient sur une feuille A4, noir sur blanc.
pic-wall-visits = des visites attendues ce mois sont faites
pic-wall-overdue = en retard à la fin du mois, sur { $den } ouverts
pic-wall-share = { $n } sur { $den } enfants vus. La part pourrait vraiment se trouver entre { $low } et { $high } %.
pic-wall-few = { $n } sur { $den } enfants : trop peu pour une part
pic-wall-private = pour qu’aucun enfant ne soit reconnu
pic-wall-nothing = rien à montrer pour ce mois
pic-wall-key = Contour : attendues. Plein : faites, ou en retard. Point : la part ; barre : où elle pourrait vraiment se trouver (95 %). Hachures : gardé privé, pas zéro.

# L’équipe d’un superviseur
pic-team-link = Cette équipe en images : visites, suivis en retard, poids, groupes d’aliments
pic-team-inside = Interne, à ne pas partager.
pic-team-support = Pour aider, pas pour classer : de petits nombres varient beaucoup, et un village difficile ne dit rien d’un agent. Les fichiers téléchargés sont notés.
pic-team-sieve = Choisir un temps
pic-team-period = Mois ou trimestre
pic-team-who = Les enfants qui sont maintenant dans votre équipe. Les visites vont à l’agent de leur jour, les suivis à celui de leur ouverture, les enfants à celui qui les a vus en dernier. L’ordre est celui des noms.
pic-team-all = Tous ensemble
pic-team-each = Chaque agent
pic-team-nobody = Personne de cette équipe n’a visité ni n’avait de visite attendue dans ce temps.
pic-team-title = L’équipe en images
