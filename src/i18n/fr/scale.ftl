# Réel, ou la balance : l’erreur de mesure à côté des gains, des pertes et des chutes.

scale-heading = Est-ce réel, ou est-ce la balance ?
scale-weight = Deux pesées soigneuses du même enfant peuvent différer jusqu’à { $tolerance } par la seule erreur de mesure.
scale-length = Deux mesures soigneuses de la taille du même enfant peuvent différer jusqu’à { $tolerance } par la seule erreur de mesure.
scale-z = Cela fait { $before } z le { $before_on } et { $now } z le { $on }.
scale-within = Ce constat tient dans cette erreur : mesurez une seconde fois. Il reste aussi urgent qu’il l’est.
scale-beyond = Ce constat dépasse cette erreur.
scale-untold = Une erreur d’écriture, une autre balance ou un autre enfant peuvent faire une différence plus grande : mesurez une seconde fois.
scale-drawing = Le changement et de combien il peut être faux
scale-drawing-said = { $change } ; une seconde pesée pourrait donner de { $low } à { $high }.
scale-drawing-limit = On le compare à { $limit }.
scale-limit = contre { $limit }
scale-last-within = Le dernier changement de poids peut ne pas être plus que cela : pesez une seconde fois.
scale-last-beyond = Le dernier changement de poids dépasse cela.
scale-bars-weight = Les barres aux points montrent où une autre pesée soigneuse aurait pu tomber : { $error } de plus ou de moins.
scale-bars-length = Les barres aux points montrent où une autre mesure soigneuse aurait pu tomber : { $error } de plus ou de moins.
scale-plus-minus = { $value } ± { $error }
scale-change = Changement de poids
scale-change-may-be = { $change }, peut-être la balance
scale-signed = +{ $change }
scale-closer = Les derniers poids, de plus près
scale-closer-title = { $name } : les derniers poids, de plus près
