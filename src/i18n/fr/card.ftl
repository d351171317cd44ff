# La carte que garde la famille.

card-title = Carte pour la famille : { $name }
card-link = Carte pour la famille
card-born = { $sex ->
        [F] née le { $day } · { $word }
       *[M] né le { $day } · { $word }
    }
card-weight = { $weight } le { $day }.
card-weight-more = { $weight } le { $day } : { $change } de plus que le { $before }.
card-weight-less = { $weight } le { $day } : { $change } de moins que le { $before }.
card-weight-same = { $weight } le { $day } : comme le { $before }.
card-lines = { $sex ->
        [F] La ligne épaisse au milieu des autres est le milieu des enfants en bonne santé ; plus haut : plus lourde que la plupart, plus bas : plus légère que la plupart. Les points sont ses poids.
       *[M] La ligne épaisse au milieu des autres est le milieu des enfants en bonne santé ; plus haut : plus lourd que la plupart, plus bas : plus léger que la plupart. Les points sont ses poids.
    }
card-now = Maintenant, à { $age }
card-held = Ne pas donner : { $foods }. Pas avant qu’un agent de santé l’ait dit.
card-next = Prochaine visite : du { $first } au { $last }.
card-go = Allez tout de suite au centre de santé, ou appelez le { $number }
card-go-local = Allez tout de suite au centre de santé, ou appelez votre numéro d’urgence local
card-sign-drink = ne peut ni boire ni téter
card-sign-vomits = vomit tout
card-sign-fits = convulsions
card-sign-sleepy = très somnolent, difficile à réveiller
card-sign-breath = respire avec peine
card-sign-fast = respire vite
card-sign-hot = chaud ou froid au toucher
card-sign-stool = sang dans les selles
card-sign-feet = les deux pieds gonflés
card-sign-food = gonflement, plaques ou souffle court après un aliment
card-helps = Cette carte vous aide, vous et votre agent de santé. Elle ne remplace pas le centre de santé. Pas de miel avant 12 mois. Pas de noix entières. Continuez l’allaitement.
card-print = Pour imprimer : le menu de votre navigateur. A5, ou une demi-feuille A4.
