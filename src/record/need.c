/* What a load needs of its canner, as a recorder would show it. */
#include <math.h>

#include "jarwright/physics.h"
#include "jarwright/record.h"

void record_need_make(const struct process *process, enum canner canner, double elevation_ft,
		      struct record_need *out)
{
	bool pressure = canner == CANNER_DIAL_GAUGE || canner == CANNER_WEIGHTED_GAUGE;
	double most = pressure ? RECORD_CLOSED_PSI_MOST : RECORD_OPEN_PSI_MOST;
	*out = (struct record_need){
	    .canner = canner,
	    .pressure = pressure,
	    .elevation_ft = elevation_ft,
	    .minutes = process->minutes,
	    .psi = process->psi,
	    .vent_minutes = process->vent_minutes,
	    .boiling_f = physics_boiling_point(elevation_ft),
	    .least = {physics_canner_temperature(process->psi, elevation_ft),
		      pressure ? (double)process->psi : NAN},
	    .most = {physics_canner_temperature(most, elevation_ft), most},
	};
}

void record_need_without(struct record_need *need, enum record_channel channel)
{
	need->least[channel] = NAN;
}
