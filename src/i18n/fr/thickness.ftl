# Thickness counts: meals needed, an estimate for the talk with the family. Never says to give less.

thickness-heading = L’épaisseur compte
thickness-meals = { $count } repas
thickness-feeds = { $count } repas et prises de lait
thickness-than-now = Aussi liquide que maintenant, il faudrait { $many } par jour ; { $hoped } : au moins { $few }.
thickness-than-now-thicker = Comme maintenant ({ $usual }), il faudrait { $many } par jour ; { $hoped } : au moins { $few }.
thickness-than-watery = Nourriture { $hoped } : au moins { $few } par jour ; { $usual }, il en faudrait { $many }.
thickness-mashed-or-richer = écrasé ou plus épais
thickness-count = au moins { $meals } par jour
thickness-next = Ce qui vient ensuite, au poids d’aujourd’hui ({ $stage }) : liquide { $watery } repas par jour, lisse et épais { $smooth }, écrasé ou plus épais { $mashed }.
thickness-caution = Une estimation à partir de moyennes, pas une limite : plus est bienvenu, suivez la faim de l’enfant. Le lait continue comme avant. Un enfant qui a un plan du centre de santé suit ce plan.
thickness-how = Comment c’est calculé
thickness-source = Source :
thickness-energy-breastfed = Énergie à apporter par les aliments, en plus du lait maternel, à cette étape ({ $stage }) : { $kcal } kcal par jour.
thickness-energy-all = Énergie nécessaire en tout, lait et aliments ensemble, à cette étape ({ $stage }) : { $kcal } kcal par jour. Les prises de lait comptent comme repas.
thickness-full-meal = Un repas complet : { $weight } × { $per } g = { $g } g.
thickness-weighed = Pesé le { $day }.
thickness-line = { $food } : { $g } g × { $density } kcal = { $meal } kcal par repas. { $kcal } ÷ { $meal } = { $exact }, arrondi vers le haut : { $up }.
thickness-raised = Porté à { $count }, le minimum de l’étape.
thickness-least = Jamais moins de { $count } par jour à cette étape.

not-estimated-milk-only = Le lait suffit.
not-estimated-first-tastes = Premières bouchées : combien et combien de fois, l’enfant donne le rythme. Le nombre de repas est estimé après les premières semaines.
not-estimated-no-weight = Le nombre de repas ne peut pas être estimé : pas encore de poids. Pesez l’enfant.
not-estimated-weight-suspect = Le nombre de repas ne peut pas être estimé : le poids est peu probable. Pesez de nouveau.
not-estimated-swollen = Le nombre de repas ne peut pas être estimé : les deux pieds sont gonflés, et l’eau est pesée aussi. Le centre de santé dit comment nourrir.
not-estimated-milk-unknown = Le nombre de repas ne peut pas être estimé : on ne sait pas si l’enfant est allaité. Demandez à la prochaine visite.
